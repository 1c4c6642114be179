#pragma once

#include "time/zone_history.hpp"
#include "trace/trace_view.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace tracewright {

/// How far two sensors worn at once read apart: b minus a, in mg/dL.
struct SensorAgreement {
    std::size_t pairs = 0;
    int days = 0;
    double mean_difference = 0;
    double sd = 0;                   ///< of the pairs, n - 1
    std::array<double, 2> limits{};  ///< mean -+ 1.96 sd: where 95 % of pairs lie
    /// Of the mean difference, the civil day as the unit of evidence; empty under 5 days.
    std::optional<std::array<double, 2>> interval95;
};

/// Pairs each reading of the sensor that reports less often with the nearest of the other, up to
/// half of that one's interval away; LOW and HIGH pair with nothing. Empty under 2 pairs. Limits:
/// Bland & Altman 1986, Lancet 327:307, 10.1016/S0140-6736(86)90837-8; pairs of one body follow
/// each other, so the interval rests on the days' means (AR(1) grid, docs/methods/ar1-grid.md).
std::optional<SensorAgreement> sensor_agreement(const TraceView& a, const TraceView& b,
                                                const ZoneHistory& zones);

}  // namespace tracewright
