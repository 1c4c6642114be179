// Shares as the coach gives, lists and revokes them.
#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "time/day_text.hpp"

#include <charconv>

namespace tracewright {

namespace {

// A whole number from 1 on. Empty for anything else.
std::optional<std::int64_t> whole_number(const std::string& text) {
    std::int64_t number = 0;
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    return read.ec == std::errc{} && read.ptr == end && number > 0 ? std::optional(number)
                                                                   : std::nullopt;
}

const char* state_of(const Share& share, Instant now) {
    return share.revoked_at ? "revoked" : share.until <= now ? "ended" : "open";
}

Reply shares_reply(Asked& asked) {
    const auto shares = asked.store.shares(asked.client->id);
    if (!shares) {
        return problem_of(shares.error());
    }
    const ZoneHistory clock = client_clock(asked.client->facts);
    Json list = Json::array();
    for (const ShareRecord& record : *shares) {
        const Share& share = record.share;
        Json kinds = Json::array();
        for (const SharedKind kind : every_shared_kind) {
            if (share.kinds.has(kind)) {
                kinds.push_back(name_of(kind));
            }
        }
        Json looks = Json::array();
        for (const ShareLook& look : record.looks) {
            looks.push_back({{"at", iso_time(look.at, clock)},
                             {"label", day_and_time(clock.wall_time(look.at))},
                             {"asked", look.asked},
                             {"answer", look.answer}});
        }
        list.push_back(
            {{"id", record.id},
             {"recipient", share.recipient},
             {"purpose", share.purpose},
             {"kinds", std::move(kinds)},
             {"days", share.window.count()},
             {"given_at", iso_time(share.given_at, clock)},
             {"until", iso_time(share.until, clock)},
             {"revoked_at", share.revoked_at ? Json(iso_time(*share.revoked_at, clock)) : Json()},
             {"state", state_of(share, asked.acting.at)},
             {"looks", std::move(looks)}});
    }
    return json_reply({{"shares", std::move(list)}});
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
    const auto days = whole_number(fields->at("days"));
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
    const auto number = whole_number(asked.values[1]);
    if (!number) {
        return problem(404, "not_found", "There is no such thing",
                       "found no number of one of them");
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
