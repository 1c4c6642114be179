#pragma once

#include "responses/eating_occasion.hpp"
#include "trace/counted_trace.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// What one occasion added to glucose once the others and the time of day are taken off.
struct MealAmplitude {
    bool readable = false;      ///< false: not enough of its day was sensed
    double amplitude = 0;       ///< mg/dL at the peak of its rise, never below 0
    double standard_error = 0;  ///< the shift's uncertainty in it
    /// At the likeliest shift and without being drawn to its food's mean: for comparing foods,
    /// whose spread the ridge would hide.
    double own = 0;
    double shift_minutes = 0;  ///< of the rise against the written time: + is later
    double shift_deviation = 0;
    /// Of its estimate with that of the occasion before and after on its day; 0 without one.
    double correlation_before = 0;
    double correlation_after = 0;
    /// Within 90 minutes of another: only the sum of the two is told well.
    bool shares_uncertain = false;
};

/// glucose = round the clock baseline of each wear + sum of amplitudes x kernel + AR(1).
struct OverlapModel {
    std::string none_because;  ///< why there is no model; empty if there is
    double peak_minutes = 0;   ///< of the kernel
    double correlation_5min = 0;
    double noise_deviation = 0;      ///< mg/dL, of the AR(1) errors themselves
    double amplitude_deviation = 0;  ///< mg/dL: how far one meal is let stray from its food's mean
    int days = 0;
    double left_out_score = 0;         ///< log density of days predicted from the others
    std::vector<MealAmplitude> meals;  ///< one for each occasion
};

struct OverlapSettings {
    std::vector<double> peaks = {25, 35, 45, 55, 65, 75, 90};  ///< searched first, then halfway
    std::vector<double> correlations = {0.90, 0.95, 0.97, 0.985};
    std::vector<double> amplitude_deviations = {10, 20, 40, 80};
    double shift_deviation = 10;  ///< minutes, of the diary's clock
};

/// Fits the model: harmonics of 24 h and 12 h with a level for each wear, non-negative amplitudes
/// ridged towards the mean of their food (of their slot where the food was eaten once), kernel,
/// correlation and ridge chosen by how well each day is predicted from the others, coarse to fine.
/// A day runs from 04:00 to 04:00; a kernel's tail beyond it is left out. Fewer than three days
/// with readings and a meal: no model.
/// Method: statistics 7; Lawson & Hanson 1974 for the amplitudes.
OverlapModel overlap_model(std::span<const EatingOccasion> occasions, const CountedTrace& trace,
                           const ZoneHistory& zones, const OverlapSettings& settings = {});

}  // namespace tracewright
