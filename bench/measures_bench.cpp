// One client of 14 days at 5 minutes in memory, 4,032 readings.
#include "measures/core_measures.hpp"
#include "measures/day_sums.hpp"
#include "measures/measure_set.hpp"
#include "measures/usual_day.hpp"

#include <benchmark/benchmark.h>

#include <cmath>
#include <random>

using namespace tracewright;

namespace {

std::vector<Reading> client(unsigned seed) {
    std::mt19937 random{seed};
    std::normal_distribution<double> noise{0, 4};
    std::vector<Reading> readings;
    double level = 130;
    const Instant start = std::chrono::sys_days{std::chrono::year{2026} / 1 / 1};
    for (int i = 0; i < 4032; ++i) {
        level += noise(random) - (level - 130) * 0.02;
        readings.emplace_back(
            start + std::chrono::minutes{5 * i},
            Glucose{100 * static_cast<int>(std::clamp(level, 45.0, 390.0)), GlucoseUnit::mg_per_dl},
            std::chrono::minutes{5});
    }
    return readings;
}

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

const ZoneHistory floating{Zone::floating()};

}  // namespace

static void core_of_a_thousand_clients(benchmark::State& state) {
    std::vector<std::vector<Reading>> clients;
    for (unsigned c = 0; c < 1000; ++c) {
        clients.push_back(client(c));
    }
    for (auto unused : state) {
        for (const auto& readings : clients) {
            benchmark::DoNotOptimize(core_measures(view_of(readings), floating));
        }
    }
}
BENCHMARK(core_of_a_thousand_clients)->Unit(benchmark::kMillisecond);

static void day_sums_of_a_client(benchmark::State& state) {
    const auto readings = client(1);
    for (auto unused : state) {
        benchmark::DoNotOptimize(days_of_trace(view_of(readings), floating));
    }
}
BENCHMARK(day_sums_of_a_client)->Unit(benchmark::kMicrosecond);

static void usual_day_of_a_client(benchmark::State& state) {
    const auto readings = client(1);
    for (auto unused : state) {
        benchmark::DoNotOptimize(usual_day(view_of(readings), floating, GlucoseUnit::mg_per_dl));
    }
}
BENCHMARK(usual_day_of_a_client)->Unit(benchmark::kMicrosecond);

static void all_measures_of_a_client(benchmark::State& state) {
    const auto readings = client(1);
    const MeasureOptions options{GlucoseUnit::mg_per_dl, state.range(0) == 1, 1};
    for (auto unused : state) {
        benchmark::DoNotOptimize(measures_of(view_of(readings), floating, options));
    }
}
BENCHMARK(all_measures_of_a_client)->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);
