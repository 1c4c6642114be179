#include "coaching/client_clock.hpp"
#include "intake/clock_text.hpp"
#include "serve/asked_number.hpp"
#include "serve/asked_window.hpp"
#include "serve/request_body.hpp"
#include "serve/route.hpp"
#include "serve/trust_json.hpp"
#include "store/client_review_input.hpp"
#include "store/stretch_book.hpp"

#include <algorithm>

namespace tracewright {

namespace {

Reply trust_reply(Asked& asked) {
    const ClientRecord& client = *asked.client;
    const auto window = asked_window(asked.target, client_clock(client.facts));
    if (!window) {
        return window.error();
    }
    auto input = client_review_input(asked.store, client.id, client.facts, *window);
    const auto told = StretchBook(asked.store).told(client.id);
    if (!input || !told) {
        return problem_of(input ? told.error() : input.error());
    }
    if (input->wears.empty()) {
        return problem(404, "no_readings", "There is nothing to look at",
                       "found no glucose reading of this client in the window");
    }
    input->as_of = asked.acting.at;
    return json_reply(json_of_trust(*input, *told));
}

// "2026-03-02T02:30" or "2026-03-02 02:30" by the client's clock.
std::optional<Instant> moment_of(const std::string& text, const ZoneHistory& clock) {
    const auto written = written_time(text);
    const auto date = written ? written->date(DateOrder::year_first) : std::nullopt;
    if (!date || !written->has_clock || !written->year_first || written->offset) {
        return std::nullopt;
    }
    return clock.resolve(WallTime{date->time_since_epoch()} + written->clock).first;
}

Reply mark_reply(Asked& asked) {
    const auto fields = fields_of(asked.request, {"from", "to", "why"});
    if (!fields) {
        return fields.error();
    }
    const ZoneHistory clock = client_clock(asked.client->facts);
    const auto from = moment_of(fields->at("from"), clock);
    const auto to = moment_of(fields->at("to"), clock);
    if (!from || !to || *to <= *from) {
        return problem(422, "unfit_stretch", "That is no stretch of time",
                       "found another text in from or to, or an end before its beginning, "
                       "expected such as 2026-03-02T02:30");
    }
    const auto told =
        StretchBook(asked.store)
            .tell(asked.client->id, {*from, *to}, true, fields->at("why"), asked.acting);
    return told ? json_reply({{"id", *told}}, 201) : problem_of(told.error());
}

// What the program marked counts after all: named by its ends, as they were read.
Reply count_reply(Asked& asked) {
    const auto body = object_of(asked.request, {"begins", "ends", "why"});
    if (!body) {
        return body.error();
    }
    const auto& begins = body->at("begins");
    const auto& ends = body->at("ends");
    const auto& why = body->at("why");
    if (!begins.is_number_integer() || !ends.is_number_integer() || !why.is_string()) {
        return problem(422, "unfit_stretch", "That is no stretch of time",
                       "found no ends in seconds or no text why, expected those that were read");
    }
    const Interval stretch{Instant{std::chrono::seconds{begins.get<std::int64_t>()}},
                           Instant{std::chrono::seconds{ends.get<std::int64_t>()}}};
    const auto wears = asked.store.wears(asked.client->id);
    if (!wears) {
        return problem_of(wears.error());
    }
    for (const StoredWear& stored : *wears) {
        for (const Mark& mark : suspect_stretches(stored.wear)) {
            if (mark.reason == MarkReason::implausible && mark.stretch == stretch) {
                return problem(422, "not_countable", "That stays out of the measures",
                               "found a value that glucose can't be, expected another mark");
            }
        }
    }
    const auto told =
        StretchBook(asked.store)
            .tell(asked.client->id, stretch, false, why.get<std::string>(), asked.acting);
    return told ? json_reply({{"id", *told}}, 201) : problem_of(told.error());
}

Reply take_back_reply(Asked& asked) {
    const auto number = asked_number(asked.values[1]);
    if (!number) {
        return no_such_number();
    }
    const auto done = StretchBook(asked.store).take_back(asked.client->id, *number, asked.acting);
    return done ? no_content() : problem_of(done.error());
}

Reply choose_wear_reply(Asked& asked) {
    const auto body = object_of(asked.request, {"wear", "chosen"});
    if (!body) {
        return body.error();
    }
    const auto& wear = body->at("wear");
    const auto& chosen = body->at("chosen");
    if (!wear.is_string() || !chosen.is_boolean()) {
        return problem(422, "unfit_choice", "That is no such choice",
                       "found no name of a wear, or neither true nor false in chosen");
    }
    const auto wears = asked.store.wears(asked.client->id);
    if (!wears) {
        return problem_of(wears.error());
    }
    const auto found = std::ranges::find_if(*wears, [&](const StoredWear& one) {
        return one.wear.label == wear.get_ref<const std::string&>();
    });
    if (found == wears->end()) {
        return no_such_number();
    }
    const auto done =
        asked.store.choose_wear(asked.client->id, found->id, chosen.get<bool>(), asked.acting);
    return done ? no_content() : problem_of(done.error());
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/trust", Asks::who_may_look, trust_reply,
     Holds::for_the_minute, "trust_seen"},
    {Method::post, "/api/clients/{handle}/stretches", Asks::who_may_change, mark_reply},
    {Method::post, "/api/clients/{handle}/stretches/count", Asks::who_may_change, count_reply},
    {Method::post, "/api/clients/{handle}/stretches/{id}/take-back", Asks::who_may_change,
     take_back_reply},
    {Method::post, "/api/clients/{handle}/counted-wear", Asks::who_may_change, choose_wear_reply},
};

}  // namespace

std::span<const Route> trust_routes() {
    return table;
}

}  // namespace tracewright
