#include "inference/round_the_clock.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

using namespace tracewright;

namespace {

const std::vector<double> cleveland_x = {1, 2, 3, 4, 5, 6, 6,  6,  6,  6,
                                         6, 6, 6, 6, 6, 8, 10, 12, 14, 50};
const std::vector<double> cleveland_y = {18, 2,  15, 6,  10, 4,  16, 11, 7, 3,
                                         14, 17, 20, 12, 9,  13, 1,  8,  5, 19};

std::vector<std::optional<double>> wave(double noise) {
    std::vector<std::optional<double>> curve;
    for (int i = 0; i < 96; ++i) {
        const double angle = 2 * std::numbers::pi * (i + 0.5) / 96;
        curve.push_back(130 + 30 * std::cos(angle) +
                        noise * static_cast<double>(i * 7919 % 101 - 50) / 29);
    }
    return curve;
}

}  // namespace

// low-01 and low-02. Source: Cleveland 1979, 10.1080/01621459.1979.10481038 (published case from
// memory, matched by recomputation with R lowess).
TEST(RoundTheClock, low_01_lowess_without_robust_passes) {
    const auto fitted = lowess(cleveland_x, cleveland_y, 0.25);
    EXPECT_NEAR(fitted[0], 13.658820, 1e-5);
    EXPECT_NEAR(fitted[1], 11.144570, 1e-5);
    EXPECT_NEAR(fitted[2], 8.701169, 1e-5);
    EXPECT_NEAR(fitted[3], 9.722037, 1e-5);
    EXPECT_NEAR(fitted[4], 10.000000, 1e-5);
    EXPECT_NEAR(fitted[5], 11.300000, 1e-5);
    EXPECT_NEAR(fitted[15], 13.000000, 1e-5);
    EXPECT_NEAR(fitted[16], 6.439900, 1e-5);
    EXPECT_NEAR(fitted[17], 5.595914, 1e-5);
    EXPECT_NEAR(fitted[18], 5.455667, 1e-5);
    EXPECT_NEAR(fitted[19], 18.998166, 1e-5);
}

TEST(RoundTheClock, low_02_lowess_with_two_robust_passes) {
    const auto fitted = lowess(cleveland_x, cleveland_y, 0.25, 2);
    EXPECT_NEAR(fitted[0], 14.811166, 1e-5);
    EXPECT_NEAR(fitted[2], 8.983770, 1e-5);
    EXPECT_NEAR(fitted[5], 11.346002, 1e-5);
    EXPECT_NEAR(fitted[16], 6.734453, 1e-5);
    EXPECT_NEAR(fitted[19], 18.998105, 1e-5);
}

TEST(RoundTheClock, a_smooth_wave_is_left_as_it_is_and_noise_is_taken_off) {
    std::vector<std::vector<std::optional<double>>> curves = {wave(0), wave(4)};
    const std::vector<double> weights(96, 14.0);
    EXPECT_EQ(smooth_round_the_clock(curves, weights), ClockSmoothing::periodic_spline);
    for (int i = 0; i < 96; ++i) {
        const auto at = static_cast<std::size_t>(i);
        EXPECT_NEAR(*curves[0][at], *wave(0)[at], 0.2);
        EXPECT_NEAR(*curves[1][at], *wave(0)[at], 3.0);
    }
}

TEST(RoundTheClock, the_curve_meets_itself_at_midnight) {
    std::vector<std::vector<std::optional<double>>> curves = {wave(4)};
    smooth_round_the_clock(curves, std::vector<double>(96, 14.0));
    EXPECT_NEAR(*curves[0][95], *curves[0][0], 1.5);
}

TEST(RoundTheClock, what_was_not_seen_stays_empty_and_nothing_is_carried_across_it) {
    std::vector<std::vector<std::optional<double>>> curves = {wave(0)};
    for (std::size_t i = 40; i < 56; ++i) {
        curves[0][i] = std::nullopt;
    }
    for (std::size_t i = 56; i < 96; ++i) {
        curves[0][i] = 300.0;  // another world after the gap
    }
    EXPECT_EQ(smooth_round_the_clock(curves, std::vector<double>(96, 14.0)),
              ClockSmoothing::lowess_in_stretches);
    EXPECT_FALSE(curves[0][45].has_value());
    EXPECT_NEAR(*curves[0][39], *wave(0)[39], 1.0);
    EXPECT_NEAR(*curves[0][56], 300.0, 1e-6);
}
