#pragma once

#include "findings/finding.hpp"
#include "findings/first_review.hpp"
#include "inference/survival.hpp"
#include "measures/sensor_accuracy.hpp"
#include "measures/sensor_yardstick.hpp"
#include "trace/wear_fixing.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// One wear as it went.
struct WearLine {
    std::string label;
    CivilDate from;
    std::chrono::seconds lasted{0};
    WearEnd end = WearEnd::not_told;
    WearFixing fixing = {};
};

/// The wears that sat alike.
struct AlikeWears {
    std::string what;  ///< "with an overpatch", "left arm"
    int count = 0;
    int fell_off = 0;
    int sensor_failed = 0;
    Survival life;
};

/// How long sensors lasted, split by how they sat: with an overpatch or without, or by site.
struct LifeSplit {
    std::vector<AlikeWears> groups;  ///< overpatch: with, without; sites: most worn first
    int not_told = 0;
    std::optional<LogRank> test;  ///< of the first two groups, where both are large enough
    Finding finding;
};

/// By how much a sensor's reading moves away from finger-pricks with each day of wear, mg/dL a day.
struct SensorDrift {
    double a_day = 0;  ///< Theil-Sen over the means of the days of wear
    std::array<double, 2> interval95{};
};

/// What is known of a client's sensors: how long they last, and how far they read from blood.
struct SensorRecord {
    std::vector<WearLine> wears;  ///< in order of time
    Survival life;                ///< in days; failed: fell off or sensor failed
    SensorAccuracy accuracy;      ///< of all finger-pricks beside a reading
    /// The same limits with the day as cluster, where days hold several pairs.
    std::optional<LimitsOfAgreement> by_day;
    std::optional<SensorDrift> drift;  ///< from 20 pairs on 5 days of wear on
    Yardstick yardstick;
    std::optional<LifeSplit> by_overpatch;  ///< where it was told of any wear
    std::optional<LifeSplit> by_site;
    Finding life_finding;
    Finding accuracy_finding;
};

/// Ends not told, planned, removed or still on are ends of looking, not failures. Under 5 failures
/// no life is told; under 20 wears nothing is compared, nor are groups of which one has fewer than
/// 20 (ours) or that had fewer than 5 failures together. `fixings`: one for each wear of the input,
/// or none; std::invalid_argument for another number. Pairs: under 10 too few to say, under 20 a
/// description, from 20 on with intervals (ours). Method: docs/methods/sensor.md.
SensorRecord sensor_record(const ReviewInput& input, std::span<const WearFixing> fixings = {});

/// What it says in order: how long they last, the same by overpatch and site where told, how far
/// they read from blood.
std::vector<const Finding*> findings_of(const SensorRecord& record);

}  // namespace tracewright
