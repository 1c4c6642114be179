#include "calibration/cells.hpp"
#include "coaching/change_lives.hpp"
#include "inference/trial_power.hpp"

#include <fmt/format.h>

#include <boost/math/distributions/normal.hpp>

#include <iostream>

namespace tracewright {

namespace {

using namespace tracewright::testing;

template <typename Happens>
double share_of(int draws, Happens happens) {
    int count = 0;
    for (int draw = 1; draw <= draws; ++draw) {
        count += happens(static_cast<std::uint64_t>(draw)) ? 1 : 0;
        progress(draw, draws);
    }
    return 100.0 * count / draws;
}

void print_trials(int draws) {
    std::cout << "\n| pairs | draw | leaning on the day before | refuted without an effect | "
                 "interval covers |\n|---|---|---|---|---|\n";
    const std::pair<int, Draw> designs[] = {{6, Draw::fair_coins},
                                            {7, Draw::fair_coins},
                                            {8, Draw::fair_coins},
                                            {8, Draw::balanced},
                                            {10, Draw::fair_coins}};
    for (const auto& [pairs, draw] : designs) {
        for (const double leaning : {0.0, 0.6}) {
            const double refuted = share_of(draws, [&, n = pairs, how = draw](std::uint64_t seed) {
                return trial_of(n, leaning, 0, how, seed).test.p <= 0.05;
            });
            const double covers = share_of(draws, [&, n = pairs, how = draw](std::uint64_t seed) {
                const auto ends = trial_of(n, leaning, 0.8, how, seed).interval95;
                return ends && (*ends)[0] <= 0.8 && 0.8 <= (*ends)[1];
            });
            std::cout << fmt::format("| {} | {} | {} | {:.1f} % | {:.1f} % |\n", pairs,
                                     draw == Draw::balanced ? "balanced" : "coins", leaning,
                                     refuted, covers);
        }
    }
}

// The largest level at or below 5 % that whole pairs of orders can make.
double level_reached(int pairs) {
    const double smallest = smallest_block_p(pairs, Draw::fair_coins);
    return std::floor(0.05 / smallest) * smallest;
}

void print_power(int draws) {
    std::vector<double> noise;
    for (int i = 1; i < 1000; ++i) {
        noise.push_back(boost::math::quantile(boost::math::normal(), i / 1000.0));
    }
    std::cout << "\n| pairs | effect, in SD of a pair's difference | exact test, simulated | "
                 "closed form at "
                 "the level it reaches | at 5 % |\n|---|---|---|---|---|\n";
    for (const int pairs : {6, 8, 10, 12}) {
        for (const double effect : {0.7, 1.0, 1.4}) {
            std::cout << fmt::format(
                "| {} | {} | {:.1f} % | {:.1f} % | {:.1f} % |\n", pairs, effect,
                100 * sign_flip_power(noise, effect, pairs, 5, 0.05, std::max(1000, draws)),
                100 * paired_t_power(pairs, effect, 1, level_reached(pairs)),
                100 * paired_t_power(pairs, effect, 1));
        }
    }
}

void print_wears(int draws) {
    std::cout
        << "\n| sensors' true error, SD | day to day | called better or worse |\n|---|---|---|\n";
    for (const double sensor : {0.0, 0.03, 0.05}) {
        for (const double leaning : {0.0, 0.3, 0.5}) {
            const double called = share_of(
                draws, [&](std::uint64_t seed) { return called_different(sensor, leaning, seed); });
            std::cout << fmt::format("| {:.0f} % | {} | {:.1f} % |\n", 100 * sensor, leaning,
                                     called);
        }
    }
}

void print_a1c(int draws) {
    std::cout
        << "\n| weeks wander by, mg/dL | past pairs | interval covers the laboratory's next | "
           "half-width on average |\n|---|---|---|---|\n";
    for (const double wander : {6.0, 9.0, 12.0, 15.0}) {
        for (const int past : {0, 1, 2, 3}) {
            double half = 0;
            const double covers = share_of(draws, [&](std::uint64_t seed) {
                ExpectedA1c told;
                const bool covered = a1c_covered(past, wander, seed, &told);
                half += (told.interval95[1] - told.interval95[0]) / 2 / draws;
                return covered;
            });
            std::cout << fmt::format("| {} | {} | {:.1f} % | {:.2f} |\n", wander, past, covers,
                                     half);
        }
    }
}

}  // namespace

void print_change_cells(int draws) {
    std::cout << fmt::format("\nTrials, wears and A1c, {} draws a cell\n", draws);
    print_trials(draws);
    print_power(draws);
    print_wears(draws);
    print_a1c(draws);
}

}  // namespace tracewright
