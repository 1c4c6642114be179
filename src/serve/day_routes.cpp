#include "findings/wording.hpp"
#include "serve/asked_number.hpp"
#include "serve/asked_window.hpp"
#include "serve/client_shelf.hpp"
#include "serve/day_json.hpp"
#include "serve/route.hpp"
#include "time/day_text.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::days shown_unasked{14};

Reply no_readings() {
    return problem(404, "no_readings", "There is nothing to look at",
                   "found no glucose reading of this client");
}

tl::expected<ClientShelf::Sheets, Reply> sheets_of(Asked& asked) {
    auto sheets = asked.shelf.sheets(asked.store, *asked.client, asked.version);
    if (!sheets) {
        return tl::make_unexpected(problem_of(sheets.error()));
    }
    if ((*sheets)->trace.readings.empty()) {
        return tl::make_unexpected(no_readings());
    }
    return std::move(*sheets);
}

Reply days_reply(Asked& asked) {
    const auto sheets = sheets_of(asked);
    return sheets ? json_reply({{"days", json_of_days(**sheets)}}) : sheets.error();
}

Reply day_reply(Asked& asked) {
    const auto date = day_of_text(asked.values[1]);
    if (!date) {
        return problem(422, "not_a_day", "That is no day",
                       "found another text, expected a day such as 2026-03-02");
    }
    const auto sheets = sheets_of(asked);
    if (!sheets) {
        return sheets.error();
    }
    const auto& days = (*sheets)->days;
    const auto seen =
        std::ranges::find(days, *date, [](const ReviewDay& one) { return one.day.date; });
    const CivilDay day = seen != days.end() ? seen->day : (*sheets)->input.zones.day_of(*date);
    Json head = {
        {"date", day_text(*date)},
        {"label", full_date(*date, (*sheets)->input.zones.writing())},
        {"day",
         {{"begin", day.from.time_since_epoch().count()},
          {"end", day.to.time_since_epoch().count()}}},
        {"sentence", seen != days.end() ? seen->sentence : "Nothing was seen on this day."},
        {"unlike", days_unlike(**sheets)[*date]}};
    return text_reply(stretch_text(**sheets, day.interval(), Detail::each_reading, asked.acting.at,
                                   std::move(head)),
                      "application/json");
}

// The last so many days before the end of all; none where `days` is no number of days to show at
// once.
std::optional<Interval> last_days(const std::string& days, Interval all) {
    const auto number = asked_number(days);
    if (!number || *number > longest_window.count()) {
        return std::nullopt;
    }
    return Interval{std::max(all.from, all.to - std::chrono::days{*number}), all.to};
}

std::optional<Detail> detail_of(std::string_view readings) {
    if (readings == "all") {
        return Detail::each_reading;
    }
    if (readings == "extremes") {
        return Detail::extremes_of_hours;
    }
    return std::nullopt;
}

Reply trace_reply(Asked& asked) {
    const auto sheets = sheets_of(asked);
    if (!sheets) {
        return sheets.error();
    }
    const Interval all = (*sheets)->trace.window;
    const auto asked_for = asked_window(asked.target, (*sheets)->input.zones);
    if (!asked_for) {
        return asked_for.error();
    }
    const auto days = asked.target.asked("days");
    const auto last = last_days(days.value_or(std::to_string(shown_unasked.count())), all);
    if (!last) {
        return problem(422, "not_a_number_of_days", "That is no number of days",
                       "found another text in days, expected a whole number from 1 to 93");
    }
    const Interval window = asked_for->value_or(*last);
    const std::string readings = asked.target.asked("readings").value_or("all");
    const auto detail = detail_of(readings);
    if (!detail) {
        return problem(422, "not_a_detail", "That is no choice of readings",
                       "found another text in readings, expected all or extremes");
    }
    Json head = {{"begin", window.from.time_since_epoch().count()},
                 {"end", window.to.time_since_epoch().count()},
                 {"readings", readings}};
    return text_reply(stretch_text(**sheets, window, *detail, asked.acting.at, std::move(head)),
                      "application/json");
}

constexpr Route table[] = {
    {Method::get, "/api/clients/{handle}/days", Asks::who_may_look, days_reply,
     Holds::while_unchanged, "days_seen"},
    {Method::get, "/api/clients/{handle}/days/{date}", Asks::who_may_look, day_reply,
     Holds::for_the_minute, "day_seen"},
    {Method::get, "/api/clients/{handle}/trace", Asks::who_may_look, trace_reply,
     Holds::for_the_minute, "trace_seen"},
};

}  // namespace

std::span<const Route> day_routes() {
    return table;
}

}  // namespace tracewright
