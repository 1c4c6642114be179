#include "findings/days_in_turn.hpp"

#include "findings/review_input_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <functional>
#include <random>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

// Whole days of readings every 15 minutes, raised by so many mg/dL on each.
std::vector<Reading> days_at(int days, const std::function<double(int)>& raised,
                             Instant from = midnight) {
    std::vector<Reading> readings;
    for (const Reading& reading : waves(days, 15min, from)) {
        const auto day = static_cast<int>((reading.at - from) / 24h);
        readings.emplace_back(reading.at, mg(reading.hundredths() / 100.0 + raised(day)),
                              reading.interval());
    }
    return readings;
}

std::optional<Caveat> told(std::vector<Reading> readings) {
    const auto wears = wears_of(std::move(readings), "invented.csv");
    return days_in_turn(counted_trace(wears), ZoneHistory{Zone::floating()},
                        GlucoseUnit::mg_per_dl);
}

}  // namespace

TEST(DaysInTurn, a_rise_and_a_fall_over_the_wear_are_told_beside_the_average) {
    const auto rising = days_at(14, [](int day) { return 3.0 * day; });
    const FirstReview review = first_review(input_of(rising));
    const Finding* average = finding_of(review, "average");
    ASSERT_EQ(average->caveats.size(), 1U);
    EXPECT_EQ(average->caveats[0].kind, CaveatKind::days_in_turn);
    EXPECT_THAT(
        average->caveats[0].sentence,
        HasSubstr("The days were not alike: later ones lie higher, along a line by about 2"));
    EXPECT_THAT(average->caveats[0].sentence, HasSubstr("mg/dL a week (between 1"));
    EXPECT_THAT(average->caveats[0].sentence, HasSubstr("a sensor that drifts look alike here"));
    EXPECT_THAT(told(days_at(14, [](int day) { return 45 - 3.0 * day; }))->sentence,
                HasSubstr("later ones lie lower"));
}

TEST(DaysInTurn, nothing_is_told_of_few_days_or_of_days_that_stay) {
    EXPECT_FALSE(told(waves(14)));
    EXPECT_FALSE(told({}));
    EXPECT_FALSE(told(days_at(8, [](int day) { return 3.0 * day; })));
    EXPECT_FALSE(told(days_at(14, [](int day) { return 0.5 * day; })));  // 3.5 a week
}

// A second sensor that reads higher is another sensor, not another week.
TEST(DaysInTurn, a_step_from_one_wear_to_the_next_is_no_trend) {
    auto readings = days_at(10, [](int) { return 0.0; });
    const auto second = days_at(
        10, [](int) { return 40.0; }, midnight + 11 * 24h);
    readings.insert(readings.end(), second.begin(), second.end());
    EXPECT_EQ(first_review(input_of(readings)).input.wears.size(), 2U);
    EXPECT_FALSE(told(std::move(readings)));
}

// The rate of false answers on days that wander without a direction, SD 12 mg/dL (ours); and a
// drift of 3 mg/dL a day is found.
TEST(DaysInTurn, days_that_only_wander_are_seldom_called_a_trend) {
    std::mt19937 engine{20260302};
    std::normal_distribution<double> normal;
    const auto share_told = [&](double from_day_to_day, double slope) {
        int told_of = 0;
        constexpr int lives = 400;
        for (int life = 0; life < lives; ++life) {
            std::vector<double> level{12 * normal(engine)};
            for (int day = 1; day < 14; ++day) {
                level.push_back(from_day_to_day * level.back() +
                                12 * std::sqrt(1 - from_day_to_day * from_day_to_day) *
                                    normal(engine));
            }
            told_of += told(days_at(14,
                                    [&](int day) {
                                        return level[static_cast<std::size_t>(day)] + slope * day;
                                    }))
                               .has_value()
                           ? 1
                           : 0;
        }
        return told_of / static_cast<double>(lives);
    };
    const double plain = share_told(0, 0);
    const double wandering = share_told(0.4, 0);
    const double drifting = share_told(0.2, 3);
    std::printf("told: %.3f of plain, %.3f of wandering, %.3f of drifting lives\n", plain,
                wandering, drifting);
    EXPECT_LE(plain, 0.05);
    EXPECT_LE(wandering, 0.08);
    EXPECT_GE(drifting, 0.5);
}
