#include "serve/asked_window.hpp"

#include "time/day_text.hpp"

namespace tracewright {

tl::expected<std::optional<Interval>, Reply> asked_window(const RequestTarget& target,
                                                          const ZoneHistory& clock, Interval all) {
    const auto from = target.asked("from");
    const auto to = target.asked("to");
    if (!from && !to) {
        return std::optional<Interval>{};
    }
    const auto first = from ? day_of_text(*from) : std::nullopt;
    const auto last = to ? day_of_text(*to) : std::nullopt;
    if ((from && !first) || (to && !last)) {
        return tl::make_unexpected(problem(422, "not_a_day", "That is no day",
                                           "found another text in from or to, expected a day such "
                                           "as 2026-03-02"));
    }
    const Interval window{first ? clock.day_of(*first).from : all.from,
                          last ? clock.day_of(*last).to : all.to};
    if (window.to <= window.from) {
        return tl::make_unexpected(problem(422, "empty_window", "That is no window",
                                           "found a window that ends before it begins"));
    }
    return std::optional(window);
}

}  // namespace tracewright
