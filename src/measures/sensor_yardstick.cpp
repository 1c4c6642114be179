#include "measures/sensor_yardstick.hpp"

#include "inference/share_bounds.hpp"

#include <cmath>
#include <limits>

namespace tracewright {

namespace {

constexpr double none = std::numeric_limits<double>::infinity();
const double under_70 = std::nextafter(70.0, 0.0);
const double over_180 = std::nextafter(180.0, 200.0);

const std::array<YardstickRule, 7> rules = {{
    {'A', 0, under_70, 15, false, 85},
    {'B', 70, 180, 15, true, 70},
    {'C', over_180, none, 15, true, 80},
    {'D', 0, under_70, 40, false, 98},
    {'E', 70, 180, 40, true, 99},
    {'F', over_180, none, 40, true, 99},
    {'G', 0, none, 20, true, 87},
}};

bool within(const YardstickRule& rule, const AccuracyPair& pair) {
    const double allowed = rule.in_percent ? pair.reference * rule.tolerance / 100 : rule.tolerance;
    return std::abs(pair.sensor - pair.reference) <= allowed + 1e-9;
}

}  // namespace

std::span<const YardstickRule> yardstick_rules() {
    return rules;
}

Yardstick sensor_yardstick(std::span<const AccuracyPair> pairs) {
    Yardstick yardstick;
    for (const YardstickRule& rule : rules) {
        YardstickResult result{rule, 0, 0, 0, false};
        for (const AccuracyPair& pair : pairs) {
            if (pair.sensor >= rule.from && pair.sensor <= rule.up_to) {
                ++result.pairs;
                result.within += within(rule, pair) ? 1 : 0;
            }
        }
        result.bound = 100 * lower_bound_of_share(result.within, result.pairs);
        result.met = result.bound > rule.bound_above;
        yardstick.results.push_back(result);
    }
    for (const AccuracyPair& pair : pairs) {
        yardstick.sensor_low_reference_high += pair.sensor < 70 && pair.reference > 180 ? 1 : 0;
        yardstick.sensor_high_reference_low += pair.sensor > 180 && pair.reference < 70 ? 1 : 0;
    }
    return yardstick;
}

}  // namespace tracewright
