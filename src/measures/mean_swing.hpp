#pragma once

#include <optional>
#include <span>

namespace tracewright {

/// Mean amplitude of glycaemic excursions (MAGE) of one day.
struct MeanSwing {
    double sd = 0;               ///< of the day, n - 1
    bool first_upward = false;   ///< direction of the first swing kept
    std::optional<double> up;    ///< mean of the upward swings kept
    std::optional<double> down;  ///< mean size of the downward ones
    double first_direction = 0;  ///< the one of the two that came first: the measure
    double both = 0;             ///< mean of all
};

/// Swings between turning points, the ends included, larger than one SD of the same day: the
/// smallest swing goes as long as it is not larger (an end point with it, or both its points if it
/// lies within). Empty for a day without such a swing: no value, not 0. Source: Service et al.
/// 1970, Diabetes 19:644, 10.2337/diab.19.9.644 (outline); the rule for what that paper leaves open
/// is ours (docs/methods).
std::optional<MeanSwing> mean_swing(std::span<const double> values);

}  // namespace tracewright
