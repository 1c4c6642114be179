#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <array>
#include <optional>
#include <string>

namespace tracewright {

/// The ambulatory glucose profile: one notional day out of all days of a window.
struct UsualDay {
    static constexpr int bins = 96;  ///< quarter hours of the client's clock

    struct Bin {
        int days = 0;  ///< days with a reading in it
        /// 5, 25, 50, 75, 95; smoothed. Empty where too few days were seen: median from 5 days,
        /// 25-75 from 7, 5-95 from 10 (ours, no source).
        std::array<std::optional<double>, 5> percentiles;
        std::array<std::optional<double>, 5> raw;
    };

    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
    int days = 0;
    bool outer_dashed = false;  ///< fewer than 14 days: the 5-95 ribbon is drawn dashed
    std::string smoothing;      ///< in words
    std::array<Bin, bins> bin;  ///< bin i is centred on i quarter hours after midnight + 7.5 min
};

/// Weighted percentiles (type 7) per bin, then smoothed round the clock, kept in order.
/// Source: glycaemia 4; Hyndman & Fan 1996, 10.1080/00031305.1996.10473566.
UsualDay usual_day(const TraceView& view, const ZoneHistory& zones, GlucoseUnit unit);

}  // namespace tracewright
