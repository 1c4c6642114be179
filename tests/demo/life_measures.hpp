#pragma once

#include "client_life.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

namespace tracewright::testing {

/// A plain mean that grows.
struct Mean {
    double sum = 0;
    int n = 0;
    void add(double value) {
        sum += value;
        ++n;
    }
    double value() const { return n > 0 ? sum / n : std::numeric_limits<double>::quiet_NaN(); }
};

inline double middle(std::vector<double> values) {
    const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), half, values.end());
    return *half;
}

/// Fasting by the sensor: the median of the readings in the hour before waking, four at least.
inline std::optional<double> fasting_read(const ClientLife& life, const LivedWear& wear,
                                          const StoryDay& day) {
    const Instant wake = life.zones.resolve(day.wake).first;
    std::vector<double> values;
    for (const SensorReading& reading : wear.readings) {
        if (wake - std::chrono::hours{1} <= reading.at && reading.at < wake) {
            values.push_back(reading.mg_per_dl);
        }
    }
    return values.size() < 4 ? std::nullopt : std::optional(middle(std::move(values)));
}

/// What really was in the blood at a moment.
inline std::optional<double> blood_at(const LivedWear& wear, Instant at) {
    const auto minute = (at - wear.worn.from) / std::chrono::minutes{1};
    if (at < wear.worn.from || minute >= static_cast<std::ptrdiff_t>(wear.course.size())) {
        return std::nullopt;
    }
    return wear.course[static_cast<std::size_t>(minute)];
}

/// Fasting as it really was: the mean of the blood's last hour before waking.
inline std::optional<double> fasting_true(const ClientLife& life, const LivedWear& wear,
                                          const StoryDay& day) {
    Mean mean;
    const Instant wake = life.zones.resolve(day.wake).first;
    for (int back = 60; back > 0; --back) {
        if (const auto level = blood_at(wear, wake - std::chrono::minutes{back})) {
            mean.add(*level);
        }
    }
    return mean.n < 60 ? std::nullopt : std::optional(mean.value());
}

}  // namespace tracewright::testing
