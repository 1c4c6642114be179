#pragma once

#include "measures/sensor_accuracy.hpp"

#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// One demand of the United States' rule for sensors that may drive treatment, by the *sensor's*
/// value: so many per cent of pairs within a tolerance, by the lower one-sided 95 % bound.
struct YardstickRule {
    char letter;
    double from;       ///< sensor value, mg/dL, from here on ...
    double up_to;      ///< ... up to here, both ends in
    double tolerance;  ///< mg/dL below 70, else percent of the reference
    bool in_percent;
    double bound_above;  ///< percent
};

/// A to G of 21 CFR 862.1355(b)(1)(v), thresholds second-hand. Strata by the sensor's value: below
/// 70, 70 to 180, above 180, all.
std::span<const YardstickRule> yardstick_rules();

struct YardstickResult {
    YardstickRule rule;
    int pairs = 0;
    int within = 0;
    double bound = 0;  ///< percent; exact
    bool met = false;
};

struct Yardstick {
    std::vector<YardstickResult> results;  ///< one a rule
    int sensor_low_reference_high = 0;  ///< H: below 70 where the reference is above 180; none may
    int sensor_high_reference_low = 0;  ///< I: above 180 where the reference is below 70
};

/// That rule speaks of laboratory references and many people: here only a yardstick. J and K (wrong
/// trends) need paired slopes and are not judged.
Yardstick sensor_yardstick(std::span<const AccuracyPair> pairs);

}  // namespace tracewright
