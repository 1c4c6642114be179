#pragma once

#include "coaching/proposed.hpp"

#include <string_view>
#include <vector>

namespace tracewright {

/// What words would have the client do, whatever kind they were filed under: "skip breakfast" is
/// skipping a meal, "fast until noon" fasting, "lose 5 kg" losing weight. English, ours, no source;
/// it rather closes too much than too little, but what is not met here is no leave: the coach reads
/// too.
std::vector<Proposed> proposed_in(std::string_view words);

/// Whether the words name a dose, a way of taking or a supplement, without a medicine's name:
/// "inject 2 units less", "half a pill", "berberine".
bool speaks_of_taking(std::string_view words);

}  // namespace tracewright
