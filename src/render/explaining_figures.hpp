#pragma once

#include "coaching/illustration.hpp"
#include "coaching/trial_reading.hpp"
#include "render/figure.hpp"

namespace tracewright {

// Figures of the client's pages and the trial's report. Their smallest text is that of a client's
// page, 12 points; a report's may be smaller.

/// A stretch of the client's own trace with what was done under it. Curves differ by line, not by
/// colour alone; where numbers are off the axis says 'higher' and 'lower'. Keeps its own copy.
Figure illustration_figure(const Illustration& illustration);

/// The pairs of a trial that has ended: of each day A and B as allotted, and the mean difference
/// with its interval beside them.
Figure trial_pairs_figure(const Trial& trial, const TrialReading& reading, GlucoseUnit unit);

}  // namespace tracewright
