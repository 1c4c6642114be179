#pragma once

#include "measures/measure.hpp"
#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <cstdint>

namespace tracewright {

struct MeasureOptions {
    GlucoseUnit unit =
        GlucoseUnit::mg_per_dl;  ///< of means and the like; bands keep each reading's own
    bool intervals = true;
    std::uint64_t seed = 1;
};

/// Every measure of a window that needs only a trace, in the order they are printed. An empty view
/// gives every measure absent, with the reason.
Measures measures_of(const TraceView& view, const ZoneHistory& zones,
                     const MeasureOptions& options);

/// The same over the parts of the window in which the clock shows [begin, end) after midnight (a
/// night, a day part): pooled over the days.
Measures measures_in_clock_window(const TraceView& view, const ZoneHistory& zones,
                                  std::chrono::seconds begin, std::chrono::seconds end,
                                  const MeasureOptions& options);

/// The same over whole civil days only of the given kind.
enum class DayKind { weekday, weekend };
Measures measures_on(const TraceView& view, const ZoneHistory& zones, DayKind kind,
                     const MeasureOptions& options);

}  // namespace tracewright
