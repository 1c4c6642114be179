#pragma once

#include "findings/review_input.hpp"
#include "render/review_json.hpp"
#include "store/practice_records.hpp"

#include <vector>

namespace tracewright {

/// How far a window's data can be trusted, as the page shows it: the finding on trust with its
/// caveats, what each measure needs, every suspect stretch (found by the program or told by a
/// coach) with what was told of it, and what is said of hours in range, average and lows with all
/// readings and without the stretches that are marked now. Lows are escalated from the raw trace
/// whatever is marked.
Json json_of_trust(const ReviewInput& input, const std::vector<StretchRecord>& records);

}  // namespace tracewright
