#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// Local linear fit with tricube weights at each x (ascending), each over the nearest `span` share
/// of all points; `robust_passes` re-weightings by bisquare.
/// Source: Cleveland 1979, JASA 74:829, 10.1080/01621459.1979.10481038.
std::vector<double> lowess(std::span<const double> x, std::span<const double> y, double span,
                           int robust_passes = 0);

/// How a curve of equal bins round the clock was smoothed.
enum class ClockSmoothing { periodic_spline, lowess_in_stretches };

/// Smooths each of `curves` (bins values each, empty where nothing is known; all curves empty at
/// the same bins) by a cyclic cubic P-spline on 24 knots, its penalty chosen by restricted maximum
/// likelihood on a grid, weighted by `weights`. If bins are empty, each stretch of known bins is
/// smoothed for itself by LOWESS over about two hours, so that nothing is carried across what was
/// not seen. Empty bins stay empty. Settings: statistics 11; Eilers & Marx 1996, Stat Sci 11:89.
ClockSmoothing smooth_round_the_clock(std::span<std::vector<std::optional<double>>> curves,
                                      std::span<const double> weights);

}  // namespace tracewright
