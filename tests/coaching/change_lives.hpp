#pragma once

#include "coaching/before_after.hpp"
#include "coaching/expected_a1c.hpp"
#include "coaching/red_cell_memory.hpp"
#include "inference/block_randomisation.hpp"
#include "measures/glucose_indicator.hpp"

#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_real_distribution.hpp>

#include <cmath>
#include <vector>

namespace tracewright::testing {

// Lives whose truth is known, for the error rates of docs/calibration.md and a small part of them
// in the tests. Invented.

class Draws {
  public:
    explicit Draws(std::uint64_t seed) : engine_(seed) {}
    double normal(double mean = 0, double sd = 1) { return mean + sd * normal_(engine_); }
    double between(double from, double to) {
        return boost::random::uniform_real_distribution<double>(from, to)(engine_);
    }

  private:
    boost::random::mt19937_64 engine_;
    boost::random::normal_distribution<double> normal_;
};

/// A trial's pairs out of values that lean on the one before (SD 1), A higher by `effect`.
inline BlockRandomisation trial_of(int blocks, double leaning, double effect, Draw draw,
                                   std::uint64_t seed) {
    Draws draws(seed);
    const auto order = drawn_order(blocks, draw, seed + 1'000'003);
    std::vector<double> differences;
    double u = draws.normal();
    for (const bool a_first : order) {
        double values[2];
        for (double& value : values) {
            u = leaning * u + std::sqrt(1 - leaning * leaning) * draws.normal();
            value = u;
        }
        differences.push_back(effect + (a_first ? values[0] - values[1] : values[1] - values[0]));
    }
    return block_randomisation(differences, order, draw, seed);
}

/// Two fortnights of one unchanged person, ten weeks apart, each by a sensor with a factor of its
/// own. A day's level leans on the day before; in range about 60 to 70 %.
inline ReviewInput two_equal_wears(double sensor_sd, double leaning, std::uint64_t seed) {
    Draws draws(seed);
    ReviewInput input;
    const double level = draws.between(140, 180);
    const double swing = draws.between(0.2, 0.4);
    for (const int begins : {20'000, 20'070}) {
        Wear wear;
        wear.label = begins == 20'000 ? "wear 1" : "wear 2";
        wear.start = Instant{std::chrono::days{begins}};
        wear.interval = std::chrono::minutes{30};
        const double factor = std::exp(draws.normal(0, sensor_sd));
        double day_to_day = draws.normal();
        for (int day = 0; day < 14; ++day) {
            day_to_day =
                day == 0 ? day_to_day
                         : leaning * day_to_day + std::sqrt(1 - leaning * leaning) * draws.normal();
            for (int half_hour = 0; half_hour < 48; ++half_hour) {
                const double wave = swing * std::sin(half_hour / 48.0 * 4 * M_PI);
                const double value = level * (1 + wave + 0.10 * day_to_day + draws.normal(0, 0.08));
                wear.readings.emplace_back(
                    wear.start + (day * 48 + half_hour) * wear.interval,
                    Glucose{rounded_hundredths(std::max(45.0, value * factor)),
                            GlucoseUnit::mg_per_dl},
                    wear.interval);
            }
        }
        input.wears.push_back(std::move(wear));
    }
    input.as_of = Instant{std::chrono::days{20'090}};
    return input;
}

/// Whether two wears of which nothing is true were called better or worse.
inline bool called_different(double sensor_sd, double leaning, std::uint64_t seed) {
    const ReviewInput input = two_equal_wears(sensor_sd, leaning, seed);
    return before_after(input, {0}, {1}, MedicineTimeline{}).finding.answer == Answer::yes;
}

/// A person with an A1c offset and a red cells' lifespan of their own, glucose that wanders by
/// `wander` mg/dL (SD) with a memory of 40 days, a fortnight's wear before each of `past` labs 90
/// days apart and before today, and a lab to come. Whether the expected interval holds it.
inline bool a1c_covered(int past, double wander, std::uint64_t seed, ExpectedA1c* told = nullptr) {
    Draws draws(seed);
    const double lifespan = draws.between(90, 130);
    const double offset = draws.normal(0, 0.5);
    const double level = draws.normal(150, 20);
    const int wait = static_cast<int>(draws.between(0, 90));
    const int first = -90 * past - 140;
    std::vector<double> glucose;  // by day from `first` on
    double weeks = draws.normal();
    double day = draws.normal();
    for (int at = first; at <= wait; ++at) {
        weeks = std::exp(-1 / 40.0) * weeks + std::sqrt(1 - std::exp(-2 / 40.0)) * draws.normal();
        day = 0.3 * day + std::sqrt(1 - 0.09) * draws.normal();
        glucose.push_back(level + wander * weeks + 18 * day);
    }
    const auto lab = [&](int on) {
        const RedCellMemory memory(lifespan);
        double mean = 0;
        for (int ago = 1; ago <= 130; ++ago) {
            mean +=
                memory.share(ago - 1, ago) * glucose[static_cast<std::size_t>(on - ago - first)];
        }
        const double truth = a1c_from_average(mean).percent + offset;
        return truth * (1 + draws.normal(0, 0.02));
    };
    const CivilDate today{std::chrono::days{20'500}};
    std::vector<DayMean> days;
    std::vector<A1cResult> results;
    for (int k = past; k >= 0; --k) {
        const int end = -90 * k;
        const double factor = std::exp(draws.normal(0, one_sensors_error));
        for (int at = end - 14; at < end; ++at) {
            days.push_back({today + std::chrono::days{at},
                            factor * glucose[static_cast<std::size_t>(at - first)]});
        }
        if (k > 0) {
            results.push_back({today + std::chrono::days{end}, lab(end), false});
        }
    }
    const ExpectedA1c expected =
        expected_a1c(days, results, today + std::chrono::days{wait}, today);
    if (told != nullptr) {
        *told = expected;
    }
    const double next = lab(wait);
    return expected.interval95[0] <= next && next <= expected.interval95[1];
}

}  // namespace tracewright::testing
