#pragma once

#include "trace/reading.hpp"

#include <initializer_list>
#include <vector>

namespace tracewright::testing {

inline const Instant midnight{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2}};

inline Glucose mg(double value) {
    return {rounded_hundredths(value), GlucoseUnit::mg_per_dl};
}

inline Glucose mmol(double value) {
    return {rounded_hundredths(value), GlucoseUnit::mmol_per_l};
}

/// mg/dL values one interval apart from `from` on.
inline std::vector<Reading> every(std::chrono::seconds interval, const std::vector<double>& values,
                                  Instant from = midnight) {
    std::vector<Reading> readings;
    for (const double value : values) {
        readings.emplace_back(from + interval * static_cast<int>(readings.size()), mg(value),
                              interval);
    }
    return readings;
}

}  // namespace tracewright::testing
