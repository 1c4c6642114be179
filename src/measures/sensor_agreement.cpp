#include "measures/sensor_agreement.hpp"

#include "inference/ar1_grid.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

namespace tracewright {

namespace {

constexpr std::size_t fewest_days = 5;
constexpr double normal_quantile = 1.96;

bool counts(const Reading& reading) {
    return !reading.censored() && !reading.implausible();
}

const Reading* nearest(std::span<const Reading> readings, Instant at) {
    const auto after = std::ranges::lower_bound(readings, at, {}, &Reading::at);
    const Reading* best = after != readings.end() ? &*after : nullptr;
    if (after != readings.begin()) {
        const Reading& before = *std::prev(after);
        if (best == nullptr || at - before.at < best->at - at) {
            best = &before;
        }
    }
    return best;
}

struct Pair {
    Instant at;
    double difference = 0;  // b minus a
};

std::vector<Pair> pairs_of(const TraceView& a, const TraceView& b) {
    const auto of_a = readings_within(a);
    const auto of_b = readings_within(b);
    const bool a_is_rarer = of_a.size() <= of_b.size();
    const auto rare = a_is_rarer ? of_a : of_b;
    const auto often = a_is_rarer ? of_b : of_a;
    std::vector<Pair> pairs;
    for (const Reading& reading : rare) {
        const Reading* other = nearest(often, reading.at);
        if (other == nullptr || !counts(reading) || !counts(*other) ||
            std::chrono::abs(other->at - reading.at) * 2 > other->interval()) {
            continue;
        }
        const double difference =
            other->value().in(GlucoseUnit::mg_per_dl)-reading.value().in(GlucoseUnit::mg_per_dl);
        pairs.push_back({reading.at, a_is_rarer ? difference : -difference});
    }
    return pairs;
}

}  // namespace

std::optional<SensorAgreement> sensor_agreement(const TraceView& a, const TraceView& b,
                                                const ZoneHistory& zones) {
    const std::vector<Pair> pairs = pairs_of(a, b);
    if (pairs.size() < 2) {
        return std::nullopt;
    }
    SensorAgreement agreement;
    agreement.pairs = pairs.size();
    std::map<CivilDate, std::pair<double, int>> by_day;
    for (const Pair& pair : pairs) {
        agreement.mean_difference += pair.difference;
        auto& [sum, count] = by_day[zones.date_at(pair.at)];
        sum += pair.difference;
        ++count;
    }
    const auto n = static_cast<double>(pairs.size());
    agreement.mean_difference /= n;
    double squares = 0;
    for (const Pair& pair : pairs) {
        squares += std::pow(pair.difference - agreement.mean_difference, 2);
    }
    agreement.sd = std::sqrt(squares / (n - 1));
    agreement.limits = {agreement.mean_difference - normal_quantile * agreement.sd,
                        agreement.mean_difference + normal_quantile * agreement.sd};
    agreement.days = static_cast<int>(by_day.size());
    if (by_day.size() >= fewest_days) {
        std::vector<double> means;
        std::vector<SeriesStep> steps;
        std::optional<CivilDate> before;
        for (const auto& [day, total] : by_day) {
            means.push_back(total.first / total.second);
            steps.push_back({!before, before ? static_cast<int>((day - *before).count()) : 1});
            before = day;
        }
        const auto interval = ar1_mean(means, steps).interval();
        if (interval[1] > interval[0]) {  // days all alike tell nothing of how far they can differ
            agreement.interval95 = interval;
        }
    }
    return agreement;
}

}  // namespace tracewright
