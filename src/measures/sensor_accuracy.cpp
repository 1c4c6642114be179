#include "measures/sensor_accuracy.hpp"

#include "diary/finger_prick.hpp"
#include "measures/error_grid.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr std::chrono::minutes apart_at_most{5};
constexpr double rounding = 1e-9;  // 15 % of 260 is 39 whatever the binary neighbours

const Reading* nearest(std::span<const Reading> readings, Instant at) {
    const auto after = std::ranges::lower_bound(readings, at, {}, &Reading::at);
    const Reading* best = after != readings.end() ? &*after : nullptr;
    if (after != readings.begin() &&
        (best == nullptr || at - std::prev(after)->at < best->at - at)) {
        best = &*std::prev(after);
    }
    return best;
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t n = values.size();
    return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
}

}  // namespace

std::vector<AccuracyPair> finger_prick_pairs_with(const TraceView& trace, const Diary& diary) {
    std::vector<AccuracyPair> pairs;
    const auto readings = readings_within(trace);
    for (const DiaryEntry& entry : diary) {
        if (!has_measured_level(entry) || entry.time_uncertain) {
            continue;
        }
        const Reading* reading = nearest(readings, entry.at);
        const bool again = !pairs.empty() && entry.at - pairs.back().at < apart_at_most;
        if (reading == nullptr || again || reading->censored() || reading->implausible() ||
            std::chrono::abs(reading->at - entry.at) > apart_at_most) {
            continue;
        }
        pairs.push_back({entry.at, entry.glucose->in(GlucoseUnit::mg_per_dl),
                         reading->value().in(GlucoseUnit::mg_per_dl)});
    }
    return pairs;
}

bool agrees_within(const AccuracyPair& pair, double x, double cut) {
    const double allowed = pair.reference < cut ? x : pair.reference * x / 100;
    return std::abs(pair.sensor - pair.reference) <= allowed + rounding;
}

bool within_iso_15197(double reference, double meter) {
    return agrees_within({{}, reference, meter}, 15, 100);
}

SensorAccuracy sensor_accuracy(std::span<const AccuracyPair> pairs, double cut) {
    SensorAccuracy result;
    std::vector<double> reference;
    std::vector<double> sensor;
    std::vector<double> relative;
    for (const AccuracyPair& pair : pairs) {
        if (pair.reference > 0) {
            reference.push_back(pair.reference);
            sensor.push_back(pair.sensor);
        }
    }
    result.pairs = reference.size();
    if (reference.empty()) {
        return result;
    }
    result.carry = result.pairs < 10   ? PairsCarry::nothing
                   : result.pairs < 20 ? PairsCarry::description
                                       : PairsCarry::intervals;
    const auto n = static_cast<double>(reference.size());
    constexpr std::array within = {15.0, 20.0, 30.0, 40.0};
    for (std::size_t i = 0; i < reference.size(); ++i) {
        const double apart = sensor[i] - reference[i];
        result.bias += apart / n;
        result.mean_absolute += std::abs(apart) / n;
        result.mean_relative += 100 * apart / reference[i] / n;
        relative.push_back(100 * std::abs(apart) / reference[i]);
        result.mard += relative.back() / n;
        for (std::size_t k = 0; k < within.size(); ++k) {
            const bool meets = agrees_within({{}, reference[i], sensor[i]}, within[k], cut);
            result.agreeing[k] += meets ? 100 / n : 0;
        }
        const char zone = error_zone(ErrorGrid::consensus_type_2, reference[i], sensor[i]);
        ++result.zones.at(static_cast<std::size_t>(zone - 'A'));
    }
    result.median_ard = median(std::move(relative));
    result.limits = limits_of_agreement(reference, sensor);
    return result;
}

}  // namespace tracewright
