// A small fixed part of docs/calibration.md: how often trials, comparisons of wears and the A1c to
// come are wrong on lives whose truth is known. Seeds fixed; the whole table: make check-all.
#include "coaching/change_lives.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

TEST(ChangeRates, trials_without_an_effect_are_seldom_refuted_however_days_lean_on_each_other) {
    for (const Draw draw : {Draw::fair_coins, Draw::balanced}) {
        int refuted = 0;
        int covered = 0;
        for (std::uint64_t seed = 1; seed <= 500; ++seed) {
            refuted += trial_of(8, 0.6, 0, draw, seed).test.p <= 0.05 ? 1 : 0;
            const auto ends = trial_of(8, 0.6, 0.8, draw, seed).interval95;
            ASSERT_TRUE(ends);
            covered += (*ends)[0] <= 0.8 && 0.8 <= (*ends)[1] ? 1 : 0;
        }
        // 12 of 256 orders, or 2 of 70, are refuted by the lot itself: 4.7 % or 2.9 %, give or take
        // three standard errors of 500 draws.
        EXPECT_LE(refuted, 38);
        EXPECT_GE(covered, 462);
        EXPECT_LE(covered, 497);
    }
}

TEST(ChangeRates, two_equal_wears_are_seldom_called_better_or_worse) {
    for (const double sensor : {0.03, 0.05}) {
        for (const double leaning : {0.0, 0.3}) {
            int called = 0;
            for (std::uint64_t seed = 1; seed <= 200; ++seed) {
                called += called_different(sensor, leaning, seed) ? 1 : 0;
            }
            EXPECT_LE(called, 13) << sensor << " " << leaning;  // 6.5 %
        }
    }
}

TEST(ChangeRates, the_a1c_to_come_lies_in_its_range_about_as_often_as_said) {
    for (const int past : {0, 2}) {
        int covered = 0;
        for (std::uint64_t seed = 1; seed <= 500; ++seed) {
            covered += a1c_covered(past, 12, seed) ? 1 : 0;
        }
        EXPECT_GE(covered, 465) << past;  // 93 %
        EXPECT_LE(covered, 490) << past;
    }
}
