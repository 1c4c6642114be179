#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// One number with what stands behind it. Either `value` or `absent_because` is there; either
/// `interval95` or `no_interval_because` is, where there is a value.
struct Measure {
    std::string_view name;  ///< "mean", "in_range", "lbgi", ...: stable, see docs/formats
    std::string unit;       ///< "mmol/L", "%", "1"
    std::optional<double> value;
    std::optional<std::array<double, 2>> interval95;
    int days = 0;               ///< civil days the interval rests on
    double censored_share = 0;  ///< 0 to 1 of the sensed time
    /// Smallest and largest value as censored readings run to the ends of what glucose can be.
    std::optional<std::array<double, 2>> bounds;
    std::string absent_because;
    std::string no_interval_because;
};

using Measures = std::vector<Measure>;

/// Null if there is none of that name.
const Measure* find(const Measures& measures, std::string_view name);

}  // namespace tracewright
