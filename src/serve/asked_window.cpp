#include "serve/asked_window.hpp"

#include "time/day_text.hpp"

namespace tracewright {

namespace {

tl::unexpected<Reply> refused(const char* code, const char* title, const char* detail) {
    return tl::make_unexpected(problem(422, code, title, detail));
}

}  // namespace

tl::expected<std::optional<Interval>, Reply> asked_window(const RequestTarget& target,
                                                          const ZoneHistory& clock) {
    const auto from = target.asked("from");
    const auto to = target.asked("to");
    if (!from && !to) {
        return std::optional<Interval>{};
    }
    const auto first = from ? day_of_text(*from) : std::nullopt;
    const auto last = to ? day_of_text(*to) : std::nullopt;
    if ((from && !first) || (to && !last)) {
        return refused("not_a_day", "That is no day",
                       "found another text in from or to, expected a day such as 2026-03-02");
    }
    if (!first || !last) {
        return refused("half_a_window", "That is half a window",
                       "found one of from and to, expected both or neither");
    }
    if (*last < *first) {
        return refused("empty_window", "That is no window",
                       "found a window that ends before it begins");
    }
    if (*last - *first >= longest_window) {
        return refused("window_too_long", "That window is too long",
                       "found more than 93 days, expected at most so many at once");
    }
    return std::optional(Interval{clock.day_of(*first).from, clock.day_of(*last).to});
}

}  // namespace tracewright
