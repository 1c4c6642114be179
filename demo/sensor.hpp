#pragma once

#include "draws.hpp"
#include "time/instant.hpp"
#include "units/glucose.hpp"

#include <chrono>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// An invented kind of sensor.
struct SensorKind {
    std::string name;
    std::chrono::minutes interval{5};
    double lag_minutes = 8;  ///< first order; 8 to 10, from memory
    double lowest_mg_per_dl = 40;
    double highest_mg_per_dl = 400;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;
};
SensorKind five_minute_sensor();
SensorKind fifteen_minute_sensor();  ///< reports mmol/L
SensorKind one_minute_sensor();

/// Lying on the sensor: a fall and a return of ten minutes each, that depth between.
struct PressureDip {
    WallTime from;
    std::chrono::minutes lasts{35};
    double depth_mg_per_dl = 40;
};

/// Nothing was recorded.
struct SilentStretch {
    WallTime from;
    WallTime to;
};

/// What a sensor said at a moment. Beyond a limit it says only so.
struct SensorReading {
    Instant at;
    double mg_per_dl = 0;
    enum class Beyond { no, low, high } beyond = Beyond::no;
};

/// A stretch in which a sensor reads amiss, in moments.
struct SensorFault {
    Interval during;
    double depth_mg_per_dl = 0;  ///< 0: silent
};

/// What a sensor of a kind says of plasma glucose given minute by minute from `start` on: behind by
/// the lag, off by the wear's own factor `bias`, with AR(1) noise of SD 6 mg/dL (phi .7 from one
/// five minutes to the next), in whole mg/dL, limited. Empty for less than one interval.
std::vector<SensorReading> sensed(std::span<const double> mg_per_dl_each_minute, Instant start,
                                  const SensorKind& kind, double bias,
                                  std::span<const SensorFault> faults, Draws& draws);

}  // namespace tracewright
