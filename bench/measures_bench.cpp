// One client of 14 days at 5 minutes, 4,032 readings.
#include "corpus.hpp"
#include "intake/bring_in.hpp"
#include "measures/core_measures.hpp"
#include "measures/day_sums.hpp"
#include "measures/episodes.hpp"
#include "measures/measure_set.hpp"
#include "measures/usual_day.hpp"
#include "trace/counted_trace.hpp"
#include "trace/fitness.hpp"
#include "trace/suspect.hpp"

#include <benchmark/benchmark.h>

#include <string>
#include <vector>

using namespace tracewright;

namespace {

// The same invented wear as file `number` of the corpus that the peers are given.
std::string file_of(int number) {
    return corpus_wear(CorpusPlan{}, number);
}

std::vector<Reading> client(int number) {
    return bring_in_bytes(file_of(number), "corpus").readings;
}

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

const ZoneHistory floating{Zone::floating()};

}  // namespace

static void core_of_a_thousand_clients(benchmark::State& state) {
    std::vector<std::vector<Reading>> clients;
    for (int c = 0; c < 1000; ++c) {
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

// What `measures` does with one file, step by step.
static void file_of_a_client(benchmark::State& state) {
    const std::string bytes = file_of(1);
    IntakeOptions options;
    options.as_of = std::chrono::sys_days{std::chrono::year{2026} / 6 / 1};
    for (auto unused : state) {
        benchmark::DoNotOptimize(bring_in_bytes(bytes, "corpus", options));
    }
}
BENCHMARK(file_of_a_client)->Unit(benchmark::kMicrosecond);

static void counted_trace_of_a_client(benchmark::State& state) {
    const auto readings = client(1);
    for (auto unused : state) {
        benchmark::DoNotOptimize(counted_trace(wears_of(readings, "corpus")));
    }
}
BENCHMARK(counted_trace_of_a_client)->Unit(benchmark::kMicrosecond);

static void fitness_of_a_client(benchmark::State& state) {
    const auto readings = client(1);
    for (auto unused : state) {
        benchmark::DoNotOptimize(fitness_of(view_of(readings), floating, "of all"));
    }
}
BENCHMARK(fitness_of_a_client)->Unit(benchmark::kMicrosecond);

static void episodes_of_a_client(benchmark::State& state) {
    const auto readings = client(1);
    for (auto unused : state) {
        benchmark::DoNotOptimize(episodes_of(view_of(readings)));
    }
}
BENCHMARK(episodes_of_a_client)->Unit(benchmark::kMicrosecond);

static void suspect_stretches_of_a_client(benchmark::State& state) {
    const auto wears = wears_of(client(1), "corpus");
    for (auto unused : state) {
        benchmark::DoNotOptimize(suspect_stretches(wears.front()));
    }
}
BENCHMARK(suspect_stretches_of_a_client)->Unit(benchmark::kMicrosecond);
