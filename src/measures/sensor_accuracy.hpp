#pragma once

#include "diary/diary_entry.hpp"
#include "inference/limits_of_agreement.hpp"
#include "trace/trace_view.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// A sensor's reading beside a blood value, both mg/dL.
struct AccuracyPair {
    Instant at;
    double reference = 0;
    double sensor = 0;
};

/// Each finger-prick with the nearest reading up to 5 minutes away (ours); LOW, HIGH and
/// implausible readings pair with nothing, nor does a second finger-prick within 5 minutes of one
/// that has paired.
std::vector<AccuracyPair> finger_prick_pairs_with(const TraceView& trace, const Diary& diary);

/// |sensor - reference| at most `x` mg/dL below `cut`, at most `x` % of the reference from it on;
/// both ends in. Papers cut 15/15 at 100, others at 70 or 80: say which.
bool agrees_within(const AccuracyPair& pair, double x, double cut = 100);

/// ISO 15197:2013 for meters: 15 mg/dL below 100 mg/dL, 15 % from there on. As tabled in Freckmann
/// et al. 2015, 10.1177/1932296815580160.
bool within_iso_15197(double reference, double meter);

/// What pairs can carry. Ours: under 10 too few, under 20 a description, from 20 on intervals.
enum class PairsCarry : std::uint8_t { nothing, description, intervals };

struct SensorAccuracy {
    std::size_t pairs = 0;
    PairsCarry carry = PairsCarry::nothing;
    double bias = 0;                   ///< mean of sensor less reference, mg/dL
    double mean_absolute = 0;          ///< MAD, mg/dL
    double mard = 0;                   ///< mean absolute relative difference, percent
    double median_ard = 0;             ///< percent
    double mean_relative = 0;          ///< percent, signed
    std::array<double, 4> agreeing{};  ///< percent within 15/15, 20/20, 30/30, 40/40
    std::optional<LimitsOfAgreement> limits;
    std::array<int, 5> zones{};  ///< pairs in A to E of the consensus grid, type 2
};

/// Of pairs with a reference above 0. A home meter is itself off by up to 15 %: these are
/// differences between the two, not the sensor's error alone. No pair: all 0.
SensorAccuracy sensor_accuracy(std::span<const AccuracyPair> pairs, double cut = 100);

}  // namespace tracewright
