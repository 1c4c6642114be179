#pragma once

#include "trace/trace_view.hpp"

#include <span>

namespace tracewright {

/// A stretch of trace and by how much its glucose is thought higher or lower, mg/dL.
struct GlucoseShift {
    Interval stretch;
    double mg_per_dl = 0;
};

/// By how many hours a day more of the time seen would lie in range (70 to 180 mg/dL, 3.9 to 10.0
/// mmol/L) with the readings shifted; what would go low counts against it. Readings at a sensor's
/// limit stay where they are. Where stretches overlap, a reading is moved once, by the farther of
/// them. 0 for an empty view.
/// A sum over these days' own readings to rank by, not a forecast; ours, no source.
double hours_gained(const TraceView& view, std::span<const GlucoseShift> shifts);

}  // namespace tracewright
