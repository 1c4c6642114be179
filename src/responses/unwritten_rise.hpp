#pragma once

#include "diary/diary_entry.hpp"
#include "responses/eating_occasion.hpp"
#include "trace/trace_view.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// A rise that looks like a meal and has no entry: to ask about, never written as a meal.
struct UnwrittenRise {
    Instant from;
    Instant to;
    double rise = 0;  ///< mg/dL
};

/// Rises of 45 mg/dL (2.5 mmol/L) or more within 60 minutes without an eating occasion from two
/// hours before to half an hour after their start. Not the dawn rise: none is listed that starts
/// between 03:00 and 08:00, nor within an hour of the end of a written sleep; nor within 90 minutes
/// after a reading below 70 mg/dL (what was taken for a low, or the body's own answer).
/// Ours, no source.
std::vector<UnwrittenRise> unwritten_rises(const TraceView& trace,
                                           std::span<const EatingOccasion> occasions,
                                           const Diary& diary, const ZoneHistory& zones);

}  // namespace tracewright
