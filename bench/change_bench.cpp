// What the change loop costs: a trial's length from someone's own noise.
#include "inference/trial_power.hpp"

#include <benchmark/benchmark.h>

#include <random>

namespace {

using namespace tracewright;

// Twenty differences of neighbouring dinners, and an effect so small that every length is tried.
void length_of_a_trial(benchmark::State& state) {
    std::mt19937 random{4};
    std::normal_distribution<double> normal;
    std::vector<double> noise;
    for (int i = 0; i < 20; ++i) {
        noise.push_back(30 * normal(random));
    }
    const auto effect = static_cast<double>(state.range(0));
    std::size_t rows = 0;
    for (auto unused : state) {
        rows = trial_length(noise, effect, 1).rows.size();
    }
    state.counters["lengths"] = static_cast<double>(rows);
}
BENCHMARK(length_of_a_trial)->Arg(20)->Arg(1)->Unit(benchmark::kMillisecond);

}  // namespace
