#include "intake/written_time.hpp"

namespace tracewright {

bool WrittenTime::fits(DateOrder order) const {
    return instant.has_value() || date(order).has_value();
}

std::optional<CivilDate> WrittenTime::date(DateOrder order) const {
    const bool month_is_first = year_first || order == DateOrder::month_first;
    const int month = month_is_first ? first : second;
    const int day = month_is_first ? second : first;
    if (month < 1 || day < 1 || month > 12 || day > 31) {
        return std::nullopt;
    }
    const std::chrono::year_month_day ymd{std::chrono::year{year},
                                          std::chrono::month{static_cast<unsigned>(month)},
                                          std::chrono::day{static_cast<unsigned>(day)}};
    return ymd.ok() ? std::optional{CivilDate{ymd}} : std::nullopt;
}

}  // namespace tracewright
