#pragma once

#include "coaching/trial_reading.hpp"

namespace tracewright {

/// What is said of a trial that has ended: fills the finding of `reading` from its numbers.
/// `carbohydrate_apart`: of the two arms, in standard deviations.
void tell_trial(const Trial& trial, const ReviewInput& input, double carbohydrate_apart,
                TrialReading& reading);

}  // namespace tracewright
