#pragma once

#include "findings/finding.hpp"
#include "time/zone_history.hpp"
#include "trace/counted_trace.hpp"

#include <optional>

namespace tracewright {

/// That glucose rose or fell from day to day within the wears, as a caveat of the average; empty
/// where the days can't tell. Means of valid days (70 % seen), an intercept for each wear, AR(1)
/// errors on the grid, with the gates and the answer of `driver_fit`: told where a week makes more
/// than 0.3 mmol/L (5.4 mg/dL; ours, no source). `unit`: to show.
std::optional<Caveat> days_in_turn(const CountedTrace& trace, const ZoneHistory& zones,
                                   GlucoseUnit unit);

}  // namespace tracewright
