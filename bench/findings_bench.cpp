// What drives glucose: the regressions, resamples and searches behind an answer.
#include "findings/question_findings.hpp"
#include "inference/ar1_grid.hpp"
#include "inference/sign_flip.hpp"
#include "measures/day_intervals.hpp"
#include "responses/overlap_search.hpp"
#include "trace/counted_trace.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <random>

using namespace tracewright;
using namespace std::chrono_literals;

namespace {

constexpr Instant start = std::chrono::sys_days{std::chrono::year{2026} / 3 / 2};

// Nights in wears of 15, each cause and the outcome wandering; the peer script draws the same.
DriverRows nights(std::size_t count, std::size_t causes, unsigned seed) {
    std::mt19937 random{seed};
    std::normal_distribution<double> normal;
    DriverRows rows;
    rows.drivers = causes;
    rows.adjusters = 2;
    double before = 0;
    double noise = 0;
    for (std::size_t night = 0; night < count; ++night) {
        noise = 0.3 * noise + 12 * normal(random);
        double y = 130 + noise;
        for (std::size_t cause = 0; cause < causes; ++cause) {
            const double x = normal(random);
            y += cause == 0 ? 6 * x : 0;
            rows.x.push_back(x);
        }
        rows.adjuster.push_back(night % 7 >= 5 ? 1 : 0);
        rows.adjuster.push_back(before);
        rows.y.push_back(y);
        rows.wear.push_back(night / 15);
        rows.day.push_back(static_cast<int>(night));
        before = y;
    }
    return rows;
}

// 60 nights, three causes and an intercept for each of four wears.
void grid_regression_of_sixty_nights(benchmark::State& state) {
    const DriverRows rows = nights(60, 3, 1);
    constexpr std::size_t columns = 7;
    std::vector<double> x;
    std::vector<SeriesStep> steps;
    for (std::size_t i = 0; i < rows.rows(); ++i) {
        x.insert(x.end(), rows.x.begin() + static_cast<std::ptrdiff_t>(3 * i),
                 rows.x.begin() + static_cast<std::ptrdiff_t>(3 * i + 3));
        for (std::size_t wear = 0; wear < 4; ++wear) {
            x.push_back(rows.wear[i] == wear ? 1 : 0);
        }
        steps.push_back({i % 15 == 0, 1});
    }
    for (auto unused : state) {
        const Ar1Grid grid(rows.y, x, columns, steps);
        for (std::size_t cause = 0; cause < 3; ++cause) {
            benchmark::DoNotOptimize(grid.coefficient(cause).interval());
        }
    }
}
BENCHMARK(grid_regression_of_sixty_nights)->Unit(benchmark::kMicrosecond);

// 20 blocks: all 1,048,576 patterns; 21: 99,999 drawn ones.
void sign_flips(benchmark::State& state) {
    std::mt19937 random{2};
    std::normal_distribution<double> normal{2, 6};
    std::vector<double> differences(static_cast<std::size_t>(state.range(0)));
    std::generate(differences.begin(), differences.end(), [&] { return normal(random); });
    for (auto unused : state) {
        benchmark::DoNotOptimize(sign_flip(differences));
    }
}
BENCHMARK(sign_flips)->Arg(20)->Arg(21)->Unit(benchmark::kMicrosecond);

void sign_flip_interval_of_twenty_blocks(benchmark::State& state) {
    std::mt19937 random{2};
    std::normal_distribution<double> normal{2, 6};
    std::vector<double> differences(20);
    std::generate(differences.begin(), differences.end(), [&] { return normal(random); });
    for (auto unused : state) {
        benchmark::DoNotOptimize(sign_flip_interval(differences));
    }
}
BENCHMARK(sign_flip_interval_of_twenty_blocks)->Unit(benchmark::kMillisecond);

// Days at 5 minutes with four meals a day, on the model's own course.
struct Life {
    std::vector<EatingOccasion> occasions;
    std::vector<Wear> wears{1};
    CountedTrace trace;
};

Life life_of(int days) {
    std::mt19937 random{3};
    std::normal_distribution<double> normal;
    const char* const foods[] = {"porridge", "soup and bread", "stew with potatoes", "an apple"};
    const int hours[] = {7, 12, 19, 15};
    Life made;
    std::vector<double> amplitudes;
    for (int day = 0; day < days; ++day) {
        for (std::size_t meal = 0; meal < 4; ++meal) {
            EatingOccasion occasion;
            occasion.at = start + std::chrono::days{day} + std::chrono::hours{hours[meal]} +
                          std::chrono::minutes{static_cast<int>(20 * normal(random))};
            occasion.last = occasion.at;
            occasion.slot = slot_of(WallTime{occasion.at.time_since_epoch()});
            occasion.foods = {foods[meal]};
            made.occasions.push_back(occasion);
            amplitudes.push_back(std::max(0.0, 45 + 15 * normal(random)));
        }
    }
    std::sort(made.occasions.begin(), made.occasions.end(),
              [](const EatingOccasion& a, const EatingOccasion& b) { return a.at < b.at; });
    Wear& wear = made.wears[0];
    wear.start = start;
    wear.interval = 5min;
    double wander = 0;
    for (Instant at = start; at < start + std::chrono::days{days}; at += 5min) {
        wander = 0.95 * wander + 12 * std::sqrt(1 - 0.95 * 0.95) * normal(random);
        double level = 125 + wander;
        for (std::size_t m = 0; m < made.occasions.size(); ++m) {
            const double t = static_cast<double>((at - made.occasions[m].at).count()) / 60 / 50;
            level += t > 0 && t < 20 ? amplitudes[m] * t * std::exp(1 - t) : 0;
        }
        wear.readings.emplace_back(
            at,
            Glucose{static_cast<std::int32_t>(100 * std::lround(level)), GlucoseUnit::mg_per_dl},
            5min);
    }
    made.trace = counted_trace(made.wears);
    return made;
}

const ZoneHistory floating{Zone::floating()};

void block_bootstrap_of_cv(benchmark::State& state) {
    const Life life = life_of(14);
    const auto days = days_of_trace(life.trace.view(), floating);
    for (auto unused : state) {
        const DayIntervals intervals(days, 1);
        benchmark::DoNotOptimize(intervals.of_total(20, [](const GlucoseSums& sums) {
            const auto sd = sums.sd(GlucoseUnit::mg_per_dl);
            return sd ? std::optional{100 * *sd / sums.mean(GlucoseUnit::mg_per_dl)} : std::nullopt;
        }));
    }
}
BENCHMARK(block_bootstrap_of_cv)->Unit(benchmark::kMicrosecond);

// The kernel, correlation and ridge given: the days' sums and their amplitudes, none below zero.
void amplitudes_of_a_fortnight(benchmark::State& state) {
    const Life life = life_of(14);
    const OverlapSearch search(life.occasions, overlap_days(life.occasions, life.trace, floating),
                               1);
    const double deviation = 20;
    const OverlapTrial trial = search.best_at(50, 0.95, {&deviation, 1});
    for (auto unused : state) {
        for (const OverlapDay& day : search.days()) {
            const DayNormals sums = day_normals(day, 1, 50, 0.95);
            benchmark::DoNotOptimize(search.amplitudes(sums, day, trial));
        }
    }
}
BENCHMARK(amplitudes_of_a_fortnight)->Unit(benchmark::kMicrosecond);

void kernel_correlation_and_ridge_searched(benchmark::State& state) {
    const Life life = life_of(14);
    const OverlapSearch search(life.occasions, overlap_days(life.occasions, life.trace, floating),
                               1);
    for (auto unused : state) {
        benchmark::DoNotOptimize(search.best({}));
    }
}
BENCHMARK(kernel_correlation_and_ridge_searched)->Unit(benchmark::kMillisecond);

// With each meal's shift and neighbours told.
void overlap_model_of_a_fortnight(benchmark::State& state) {
    const Life life = life_of(14);
    for (auto unused : state) {
        benchmark::DoNotOptimize(overlap_model(life.occasions, life.trace, floating));
    }
}
BENCHMARK(overlap_model_of_a_fortnight)->Unit(benchmark::kMillisecond);

// Sixty candidates, each on its own beside four wears, the weekend and the night before.
void scan_of_sixty_candidates(benchmark::State& state) {
    std::vector<DriverRows> candidates;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        candidates.push_back(nights(60, 1, seed));
    }
    const std::vector<DriverSetting> settings(1);
    for (auto unused : state) {
        for (const DriverRows& rows : candidates) {
            benchmark::DoNotOptimize(driver_fit(rows, settings, 5.4));
        }
    }
}
BENCHMARK(scan_of_sixty_candidates)->Unit(benchmark::kMillisecond);

// The whole scan as the command runs it, 60 days from readings and diary to sentences.
void scan_as_the_command_runs_it(benchmark::State& state) {
    const Life life = life_of(60);
    std::mt19937 random{4};
    std::normal_distribution<double> normal;
    ReviewInput input;
    input.wears = life.wears;
    for (const EatingOccasion& occasion : life.occasions) {
        DiaryEntry entry;
        entry.kind = DiaryKind::meal;
        entry.at = occasion.at;
        entry.written = WallTime{occasion.at.time_since_epoch()};
        entry.text = occasion.text();
        entry.carbohydrate_g = Amount{std::max(5.0, 50 + 15 * normal(random)), 0, false};
        input.diary.push_back(entry);
    }
    for (int day = 0; day < 60; ++day) {
        DiaryEntry entry;
        entry.kind = DiaryKind::sleep;
        entry.at = start + std::chrono::days{day} +
                   std::chrono::minutes{1380 + static_cast<int>(40 * normal(random))};
        entry.until = entry.at + std::chrono::minutes{440 + static_cast<int>(40 * normal(random))};
        entry.written = WallTime{entry.at.time_since_epoch()};
        input.diary.push_back(entry);
    }
    std::sort(input.diary.begin(), input.diary.end(),
              [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    input.as_of = start + std::chrono::days{60};
    std::size_t candidates = 0;
    for (auto unused : state) {
        candidates = scan_causes(input, Outcome::fasting).findings.size();
    }
    state.counters["candidates"] = static_cast<double>(candidates);
}
BENCHMARK(scan_as_the_command_runs_it)->Unit(benchmark::kMillisecond);

}  // namespace
