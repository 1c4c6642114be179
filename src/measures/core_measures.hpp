#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace tracewright {

/// What is asked of every client at once: the same numbers as `measures_of` and the unsmoothed
/// lines of `usual_day`, for an even trace.
struct CoreMeasures {
    static constexpr std::size_t quarter_hours = 96;

    std::size_t count = 0;
    double mean = 0;                  ///< in the unit of the readings
    double sd = 0;                    ///< n - 1
    double cv = 0;                    ///< percent
    double gmi = 0;                   ///< percent
    std::array<double, 5> in_band{};  ///< percent, indexed by Band
    double lbgi = 0;
    double hbgi = 0;
    /// 5, 25, 50, 75, 95 % of each quarter hour of the client's clock; type 7. NaN where none was
    /// seen.
    std::array<std::array<double, 5>, quarter_hours> percentiles{};
};

/// For a trace of one unit and one interval without a gap, an implausible value or a change of the
/// clock's offset, of at least 2 and at most 64 readings in each quarter hour, levels in whole
/// mg/dL or tenths of mmol/L: there time and rows weigh alike, and one pass over a table of levels
/// does it. Empty for any other trace: `measures_of` reads those.
std::optional<CoreMeasures> core_measures(const TraceView& view, const ZoneHistory& zones);

}  // namespace tracewright
