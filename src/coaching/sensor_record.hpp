#pragma once

#include "findings/finding.hpp"
#include "findings/first_review.hpp"
#include "inference/survival.hpp"
#include "measures/sensor_accuracy.hpp"
#include "measures/sensor_yardstick.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// One wear as it went.
struct WearLine {
    std::string label;
    CivilDate from;
    std::chrono::seconds lasted{0};
    WearEnd end = WearEnd::not_told;
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
    Finding life_finding;
    Finding accuracy_finding;
};

/// Ends not told, planned, removed or still on are ends of looking, not failures. Under 5 failures
/// no life is told; under 20 wears nothing is compared. Pairs: under 10 too few to say, under 20 a
/// description, from 20 on with intervals (ours). Method: docs/methods/sensor.md.
SensorRecord sensor_record(const ReviewInput& input);

}  // namespace tracewright
