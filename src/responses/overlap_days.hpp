#pragma once

#include "responses/eating_occasion.hpp"
#include "trace/counted_trace.hpp"

#include <Eigen/Dense>

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// The readings of one day of the overlap model, from 04:00 to 04:00, and its occasions.
struct OverlapDay {
    std::size_t wear = 0;
    std::vector<double> minutes;  ///< since 04:00 began
    std::vector<double> clock;    ///< hours of the wall clock
    std::vector<double> level;    ///< mg/dL
    std::vector<std::size_t> occasions;
    std::vector<double> eaten;  ///< minutes since 04:00 began, one for each occasion
};

/// Days with at least a third of their readings, each wear's part apart.
std::vector<OverlapDay> overlap_days(std::span<const EatingOccasion> occasions,
                                     const CountedTrace& trace, const ZoneHistory& zones);

/// Sums of one day's whitened rows: baseline columns (b) and one column for each meal (a).
struct DayNormals {
    Eigen::MatrixXd bb, ab, aa;
    Eigen::VectorXd by, ay;
    double yy = 0;
    double log_scale = 0;  ///< sum of the log deviations that whitening divided by
    double rows = 0;
};

/// Baseline columns of `wears` wears: a level for each, then four harmonics.
inline Eigen::Index baseline_columns(std::size_t wears) {
    return static_cast<Eigen::Index>(wears) + 4;
}

/// `shift`: minutes for each occasion of the day, or empty for none. AR(1) in continuous time, so
/// gaps and mixed intervals are exact: correlation ^ (minutes / 5).
DayNormals day_normals(const OverlapDay& day, std::size_t wears, double peak_minutes,
                       double correlation_5min, std::span<const double> shift = {});

}  // namespace tracewright
