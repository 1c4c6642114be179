#include "findings/hours_of_day.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

constexpr std::chrono::seconds a_day = std::chrono::hours{24};

}  // namespace

bool tells_hours_of_a_day(std::chrono::seconds seen) {
    return 10 * seen >= 7 * a_day;
}

std::string in_range_words(const TimeByRange& time) {
    const std::chrono::seconds seen = time.sensed();
    if (seen.count() == 0) {
        return "nothing was seen";
    }
    if (!tells_hours_of_a_day(seen)) {
        return fmt::format("{} in range of the {} seen", hours_and_minutes(time.in_range),
                           hours_and_minutes(seen));
    }
    return hours_and_minutes(a_day * time.in_range.count() / seen.count()) +
           " of the 24 hours in range";
}

}  // namespace tracewright
