#pragma once

#include "trace/trace_view.hpp"

#include <array>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <optional>

namespace tracewright {

/// The consensus bands, lowest first.
enum class Band : std::uint8_t { very_low, low, in_range, high, very_high };

const char* name_of(Band band);

/// The band of one reading, by the edges of the unit it was reported in.
///
///            very low   low         in range    high          very high
///   mg/dL    < 54       54 ..< 70   70 .. 180   > 180 .. 250  > 250
///   mmol/L   < 3.0      3.0 ..< 3.9 3.9 .. 10.0 > 10.0 .. 13.9 > 13.9
///
/// 'LOW' is very low and 'HIGH' is very high, whatever value they carry.
/// Source: Battelino et al. 2019, Diabetes Care 42(8):1593, 10.2337/dci19-0028; strictness of the
/// edges as in Holt et al. 2021, 10.1007/s00125-021-05568-3.
inline Band band_of(const Reading& reading) {
    if (reading.censored()) {
        return reading.limit() == Limit::below ? Band::very_low : Band::very_high;
    }
    const bool mg = reading.unit() == GlucoseUnit::mg_per_dl;
    const std::int32_t g = reading.hundredths();
    return static_cast<Band>((g >= (mg ? 5400 : 300)) + (g >= (mg ? 7000 : 390)) +
                             (g > (mg ? 18000 : 1000)) + (g > (mg ? 25000 : 1390)));
}

/// 70 to 140 mg/dL, or 3.9 to 7.8 mmol/L, both ends in: the secondary range of Danne et al. 2017,
/// 10.2337/dc17-1600. It has no consensus goal.
inline bool in_tight_range(const Reading& reading) {
    const bool mg = reading.unit() == GlucoseUnit::mg_per_dl;
    return !reading.censored() && reading.hundredths() >= (mg ? 7000 : 390) &&
           reading.hundredths() <= (mg ? 14000 : 780);
}

/// 63 to 140 mg/dL, or 3.5 to 7.8 mmol/L, both ends in: the range in pregnancy (Battelino et al.
/// 2019, Table 4). Shown without a goal: the clinic leads (safety rule 11).
inline bool in_pregnancy_range(const Reading& reading) {
    const bool mg = reading.unit() == GlucoseUnit::mg_per_dl;
    return !reading.censored() && reading.hundredths() >= (mg ? 6300 : 350) &&
           reading.hundredths() <= (mg ? 14000 : 780);
}

/// Seconds per band. They add up to sensed() exactly: nothing is rounded here.
struct TimeInBands {
    std::array<std::chrono::seconds, 5> seconds_in{};  ///< indexed by Band
    std::chrono::seconds tight{0};  ///< 70 to 140 mg/dL, 3.9 to 7.8 mmol/L: inside in_range

    std::chrono::seconds in(Band band) const { return seconds_in[static_cast<std::size_t>(band)]; }
    std::chrono::seconds sensed() const;

    /// Fraction of sensed(), 0 to 1. Empty if nothing was sensed: not 0, not NaN.
    std::optional<double> share(Band band) const;
    std::optional<double> tight_share() const;
};

/// How long glucose stayed in each band; time weighs, not rows (architecture rule 3). An empty view
/// gives zeros.
TimeInBands time_in_bands(const TraceView& view);

}  // namespace tracewright
