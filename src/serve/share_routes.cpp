// Shares as the coach gives, lists and revokes them.
#include "coaching/client_clock.hpp"
#include "serve/asked_number.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "serve/share_json.hpp"
#include "time/day_text.hpp"

namespace tracewright {

namespace {

constexpr std::chrono::days usual_length{30};

Reply shares_reply(Asked& asked) {
    const auto shares = asked.store.shares(asked.client->id);
    if (!shares) {
        return problem_of(shares.error());
    }
    const ClientFacts& facts = asked.client->facts;
    Json json = json_of_shares(*shares, facts, asked.acting.at);
    json["usual_until"] = day_text(client_clock(facts).date_at(asked.acting.at) + usual_length);
    return json_reply(json);
}

Reply give_reply(Asked& asked) {
    const auto fields =
        fields_of(asked.request, {"recipient", "purpose", "kinds", "days", "until"});
    if (!fields) {
        return fields.error();
    }
    const auto kinds = kinds_in_text(fields->at("kinds"));
    if (!kinds) {
        return problem(422, "no_such_kind", "That can't be shared",
                       "kinds: found another word, expected kinds of data with commas between");
    }
    const auto days = asked_number(fields->at("days"));
    if (!days || *days > 366) {
        return problem(422, "not_a_count", "That is no number of days",
                       "days: found another text, expected a whole number from 1 to 366");
    }
    const auto until = day_of_text(fields->at("until"));
    if (!until) {
        return problem(422, "not_a_day", "That is no day",
                       "until: found another text, expected a day such as 2026-03-02");
    }
    Share share;
    share.recipient = fields->at("recipient");
    share.purpose = fields->at("purpose");
    share.kinds = *kinds;
    share.window = std::chrono::days{*days};
    share.until = client_clock(asked.client->facts).day_of(*until).to;
    const std::string token = drawn_share_token();
    const auto given =
        asked.store.give_share(asked.client->id, share, *hash_of_share_token(token), asked.acting);
    if (!given) {
        return problem_of(given.error());
    }
    return json_reply(
        {{"id", *given},
         {"token", token},
         {"address", "/share/" + token},
         {"reach", asked.secure
                       ? "It opens wherever this service is reached, by its certificate."
                       : "This service has no certificate: it opens on this machine only."}},
        201);
}

Reply revoke_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    const auto revoked = asked.store.revoke_share(asked.client->id, *number, asked.acting);
    return revoked ? no_content() : problem_of(revoked.error());
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/shares", Asks::who_may_look, shares_reply, Holds::never,
     "shares_seen"},
    {Method::post, "/api/clients/{handle}/shares", Asks::who_may_change, give_reply},
    {Method::post, "/api/clients/{handle}/shares/{id}/revoke", Asks::who_may_change, revoke_reply},
};

}  // namespace

std::span<const Route> share_routes() {
    return table;
}

}  // namespace tracewright
