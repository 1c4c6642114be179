#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <chrono>
#include <vector>

namespace tracewright {

/// A reading against an earlier one.
struct PairedDifference {
    Instant at;            ///< of the later reading
    double mg_per_dl = 0;  ///< later minus earlier
};

/// Pairs `apart` of elapsed time apart, within half an interval; the nearest earlier reading. For
/// CONGA: McDonnell et al. 2005, 10.1089/dia.2005.7.253.
std::vector<PairedDifference> differences_after(const TraceView& view, std::chrono::seconds apart);

/// Pairs at the same time of the client's clock on the civil day before, within half an interval;
/// never across an absent day. For MODD: Molnar et al. 1972, Diabetologia
/// 8:342, 10.1007/BF01218495.
std::vector<PairedDifference> differences_to_day_before(const TraceView& view,
                                                        const ZoneHistory& zones);

}  // namespace tracewright
