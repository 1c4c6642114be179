#include "measures/sensor_agreement.hpp"

#include "measures/measure_set.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tracewright {
namespace {

using namespace testing;
using namespace std::chrono_literals;

const ZoneHistory zones{Zone::fixed(std::chrono::seconds{0})};

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

std::vector<Reading> wandering(int days, std::chrono::seconds interval, std::uint32_t seed) {
    std::mt19937 draw(seed);
    std::normal_distribution<double> noise(0, 8);
    std::vector<Reading> readings;
    double level = 0;
    for (Instant at = midnight; at < midnight + std::chrono::days{days}; at += interval) {
        const double hours = static_cast<double>((at - midnight).count()) / 3600;
        level = 0.9 * level + noise(draw);
        readings.emplace_back(at, mg(std::round(150 + 40 * std::sin(hours / 3.1) + level)),
                              interval);
    }
    return readings;
}

// Source: glycaemia check rows of section 8.2 (plain arithmetic): reference 100, 150, 200, 60 and
// sensor 110, 140, 230, 50 give mean difference 5.0 and limits -32.53 to 42.53. Method: Bland &
// Altman 1986, 10.1016/S0140-6736(86)90837-8.
TEST(SensorAgreement, four_pairs_give_the_limits_worked_by_hand) {
    std::vector<Reading> reference;
    std::vector<Reading> sensor;
    const double pairs[][2] = {{100, 110}, {150, 140}, {200, 230}, {60, 50}};
    for (int i = 0; i < 4; ++i) {
        reference.emplace_back(midnight + 15min * i, mg(pairs[i][0]), 15min);
        sensor.emplace_back(midnight + 15min * i, mg(pairs[i][1]), 15min);
    }
    const auto agreement = sensor_agreement(view_of(reference), view_of(sensor), zones);
    ASSERT_TRUE(agreement);
    EXPECT_EQ(agreement->pairs, 4U);
    EXPECT_NEAR(agreement->mean_difference, 5.0, 1e-12);
    EXPECT_NEAR(agreement->limits[0], -32.53, 0.005);
    EXPECT_NEAR(agreement->limits[1], 42.53, 0.005);
    EXPECT_FALSE(agreement->interval95);
}

TEST(SensorAgreement, days_that_differ_all_alike_tell_no_interval) {
    std::vector<Reading> reference;
    std::vector<Reading> sensor;
    for (int i = 0; i < 7 * 96; ++i) {
        reference.emplace_back(midnight + 15min * i, mg(120), 15min);
        sensor.emplace_back(midnight + 15min * i, mg(124), 15min);
    }
    const auto agreement = sensor_agreement(view_of(reference), view_of(sensor), zones);
    ASSERT_TRUE(agreement);
    EXPECT_EQ(agreement->mean_difference, 4);
    EXPECT_FALSE(agreement->interval95);
}

TEST(SensorAgreement, turned_round_it_changes_its_sign) {
    const auto often = wandering(7, 5min, 1);
    const auto rare = wandering(7, 15min, 2);
    const auto one = sensor_agreement(view_of(often), view_of(rare), zones);
    const auto other = sensor_agreement(view_of(rare), view_of(often), zones);
    EXPECT_EQ(one->pairs, other->pairs);
    EXPECT_NEAR(one->mean_difference, -other->mean_difference, 1e-9);
    EXPECT_NEAR((*one->interval95)[0], -(*other->interval95)[1], 1e-6);
}

TEST(SensorAgreement, times_apart_pair_with_nothing) {
    std::vector<Reading> a{{midnight, mg(100), 5min}, {midnight + 5min, mg(100), 5min}};
    std::vector<Reading> b{{midnight + 1h, mg(100), 5min}, {midnight + 65min, mg(100), 5min}};
    EXPECT_FALSE(sensor_agreement(view_of(a), view_of(b), zones));
    EXPECT_FALSE(sensor_agreement({}, {}, zones));
}

// T3: every third reading of a five-minute sensor tells time in range within its stated interval.
TEST(Resampling, to_fifteen_minutes_moves_time_in_range_by_no_more_than_its_interval) {
    for (std::uint32_t seed = 1; seed <= 40; ++seed) {
        const auto five = wandering(14, 5min, seed);
        std::vector<Reading> fifteen;
        for (std::size_t i = 0; i < five.size(); i += 3) {
            fifteen.emplace_back(five[i].at, five[i].value(), 15min);
        }
        const Measures all = measures_of(view_of(five), zones, {});
        const Measures third = measures_of(view_of(fifteen), zones, {});
        const Measure* in_range = find(all, "in_range");
        ASSERT_TRUE(in_range->interval95);
        EXPECT_GE(*find(third, "in_range")->value, (*in_range->interval95)[0]) << seed;
        EXPECT_LE(*find(third, "in_range")->value, (*in_range->interval95)[1]) << seed;
    }
}

}  // namespace
}  // namespace tracewright
