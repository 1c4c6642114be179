#pragma once

#include "inference/ar1_grid.hpp"

#include <span>

namespace tracewright {

/// The days of one wear: values, and how many days each lies after the one before.
struct WearDays {
    std::span<const double> values;
    std::span<const SeriesStep> steps;  ///< as many; the first a segment start
    /// Of each day, such as whether it lies at the weekend: the difference is told at the same of
    /// it in both wears. Empty in either wear, or alike throughout both: not accounted for.
    std::span<const double> match{};
};

/// Second wear less first, each wear an instrument with an error of its own.
struct TwoWears {
    double raw = 0;          ///< difference of the plain means
    double first = 0;        ///< mean of the first wear's days as fitted, at the usual match
    double correlation = 0;  ///< posterior mean, from one day to the next
    TMixture days;           ///< of the difference, by the days alone
    TMixture difference;     ///< with the instruments' error
};

/// One regression of both wears' days with AR(1) errors begun anew at the wear, the correlation
/// integrated out (docs/methods/ar1-grid.md). `sensor_sd`: SD of the difference that the two
/// instruments alone would give; its square is added to the contrast's, and more days don't average
/// it away. `least_sd`: no day's value is measured better (Ar1Grid), so that days which don't vary
/// leave an interval too.
/// std::invalid_argument below two days in either wear.
TwoWears two_wears(const WearDays& first, const WearDays& second, double sensor_sd,
                   double least_sd = 0);

}  // namespace tracewright
