#include "serve/shown_readings.hpp"

#include <algorithm>
#include <utility>

namespace tracewright {

namespace {

std::int32_t level_of(const Reading& reading, GlucoseUnit unit) {
    return reading.unit() == unit ? reading.hundredths()
                                  : rounded_hundredths(reading.value().in(unit));
}

// Rising from below the limit over the levels to above the limit.
std::pair<std::int32_t, int> height_of(const ShownReading& reading) {
    const int beyond = static_cast<int>(reading.limit == Limit::above) -
                       static_cast<int>(reading.limit == Limit::below);
    return {reading.level, beyond};
}

std::vector<ShownReading> extremes_of_hours(std::span<const ShownReading> all) {
    const auto hour_of = [](const ShownReading& one) {
        return std::chrono::floor<std::chrono::hours>(one.at);
    };
    std::vector<ShownReading> extremes;
    for (auto from = all.begin(); from != all.end();) {
        const auto to = std::find_if(from + 1, all.end(), [&](const ShownReading& one) {
            return one.missing_from || hour_of(one) != hour_of(*from);
        });
        const auto lowest = std::ranges::min_element(from, to, {}, height_of);
        const auto highest = std::ranges::max_element(from, to, {}, height_of);
        extremes.push_back(*std::min(lowest, highest));
        extremes.back().missing_from = from->missing_from;
        if (lowest != highest) {
            extremes.push_back(*std::max(lowest, highest));
        }
        from = to;
    }
    return extremes;
}

}  // namespace

std::vector<ShownReading> shown_readings(std::span<const Reading> readings, GlucoseUnit unit,
                                         Detail detail) {
    std::vector<ShownReading> all;
    all.reserve(readings.size());
    const Reading* before = nullptr;
    for (const Reading& reading : readings) {
        std::optional<Instant> missing_from;
        if (before != nullptr && 2 * (reading.at - before->at) > 3 * before->interval()) {
            missing_from = before->at + before->interval();
        }
        all.push_back({reading.at, level_of(reading, unit), reading.limit(), missing_from});
        before = &reading;
    }
    return detail == Detail::each_reading ? all : extremes_of_hours(all);
}

}  // namespace tracewright
