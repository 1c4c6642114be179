#pragma once

#include "trace/held_levels.hpp"

#include <vector>

namespace tracewright {

/// Moments for which levels were told that differ, one of them at least below 54 mg/dL (3.0
/// mmol/L): each at most an hour after the one before (ours, no source).
struct DisputedLow {
    Interval stretch;  ///< from the first moment to the last one's end
    int moments = 0;
    bool all_below = false;  ///< whichever is right, it was very low
};

/// Those of a wear, in order; what an episode of its readings tells already is not among them.
/// Very low leads (safety rule 2), whatever becomes of the row it stands in.
std::vector<DisputedLow> disputed_very_lows(const Wear& wear);

}  // namespace tracewright
