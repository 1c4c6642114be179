#include "sensor.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr double noise_deviation = 6;
constexpr double noise_memory = 0.7;
constexpr double noise_memory_minutes = 5;

double depth_at(const SensorFault& fault, Instant at) {
    constexpr double ramp_seconds = 600;
    const auto since = static_cast<double>((at - fault.during.from).count());
    const auto until = static_cast<double>((fault.during.to - at).count());
    return fault.depth_mg_per_dl * std::clamp(std::min(since, until) / ramp_seconds, 0.0, 1.0);
}

bool silent_at(std::span<const SensorFault> faults, Instant at) {
    return std::any_of(faults.begin(), faults.end(), [&](const SensorFault& fault) {
        return fault.depth_mg_per_dl <= 0 && fault.during.contains(at);
    });
}

double pressed_down(std::span<const SensorFault> faults, Instant at) {
    double depth = 0;
    for (const SensorFault& fault : faults) {
        if (fault.depth_mg_per_dl > 0 && fault.during.contains(at)) {
            depth += depth_at(fault, at);
        }
    }
    return depth;
}

SensorReading limited(Instant at, double level, const SensorKind& kind) {
    SensorReading reading{.at = at, .mg_per_dl = std::round(level)};
    if (reading.mg_per_dl < kind.lowest_mg_per_dl) {
        reading = {at, kind.lowest_mg_per_dl, SensorReading::Beyond::low};
    } else if (reading.mg_per_dl > kind.highest_mg_per_dl) {
        reading = {at, kind.highest_mg_per_dl, SensorReading::Beyond::high};
    }
    return reading;
}

}  // namespace

SensorKind five_minute_sensor() {
    return {.name = "five-minute sensor (invented)"};
}

SensorKind fifteen_minute_sensor() {
    return {.name = "fifteen-minute sensor (invented)",
            .interval = std::chrono::minutes{15},
            .lag_minutes = 10,
            .highest_mg_per_dl = 500,
            .unit = GlucoseUnit::mmol_per_l};
}

SensorKind one_minute_sensor() {
    return {.name = "one-minute sensor (invented)",
            .interval = std::chrono::minutes{1},
            .lag_minutes = 9};
}

std::vector<SensorReading> sensed(std::span<const double> plasma, Instant start,
                                  const SensorKind& kind, double bias,
                                  std::span<const SensorFault> faults, Draws& draws) {
    const auto interval = static_cast<std::size_t>(kind.interval.count());
    const double memory =
        std::pow(noise_memory, static_cast<double>(interval) / noise_memory_minutes);
    const double fresh = noise_deviation * std::sqrt(1 - memory * memory);
    std::vector<SensorReading> readings;
    double beneath_skin = plasma.empty() ? 0 : plasma[0];
    double noise = draws.normal(0, noise_deviation);
    for (std::size_t minute = 0; minute < plasma.size(); ++minute) {
        beneath_skin += (plasma[minute] - beneath_skin) / kind.lag_minutes;
        if (minute == 0 || minute % interval != 0) {
            continue;
        }
        noise = memory * noise + draws.normal(0, fresh);
        const Instant at = start + std::chrono::minutes{minute};
        if (!silent_at(faults, at)) {
            readings.push_back(
                limited(at, beneath_skin * bias + noise - pressed_down(faults, at), kind));
        }
    }
    return readings;
}

}  // namespace tracewright
