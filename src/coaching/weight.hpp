#pragma once

#include "coaching/client_facts.hpp"

#include <optional>
#include <span>
#include <vector>

namespace tracewright {

struct Weight {
    CivilDate on;
    double kg = 0;
};

/// The results called "weight" in kg, g, lb or st, told in kg, ascending by date. Others, and
/// values outside 20 to 400 kg, are passed over: a slip of the unit must not look like a fall.
std::vector<Weight> weights_of(std::span<const LabResult> labs);

/// A body weight that fell by 5 % or more of an earlier one within 26 weeks: the last such.
/// 5 %: safety rule 10; the 26 weeks are ours, no source.
struct WeightFall {
    Weight from;
    Weight to;
    double percent = 0;
};
std::optional<WeightFall> weight_fall(std::span<const Weight> weights, CivilDate as_of);

}  // namespace tracewright
