#include "responses/meal_response.hpp"

#include "responses/days_for_tests.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

const ZoneHistory zones{Zone::floating()};

// 100 before noon; then up 2 a minute for an hour, down 1 a minute for two.
double tent(Instant at) {
    const double minutes = minutes_since(moment(0, 12), at);
    return minutes <= 0 ? 100 : minutes <= 60 ? 100 + 2 * minutes : std::max(100.0, 280 - minutes);
}

EatingOccasion lunch() {
    return eating_occasions({meal(moment(0, 12), "rice", 60)}, zones)[0];
}

}  // namespace

// By hand: peak 220 at 60, 160 at 120, 100 again at 180; area 60 x 120 / 2 + (120 + 60) / 2 x 60.
TEST(MealResponse, of_a_tent_is_what_the_hand_gives) {
    const CountedTrace trace = drawn_trace(moment(0, 8), moment(0, 18), 5min, tent);
    const MealResponse r = meal_response(lunch(), nullptr, trace.view());
    EXPECT_EQ(r.not_readable, "");
    EXPECT_EQ(r.baseline, 100);
    EXPECT_EQ(r.peak, 220);
    EXPECT_EQ(r.rise, 120);
    EXPECT_EQ(r.minutes_to_peak, 60);
    EXPECT_EQ(r.at_1h, 220);
    EXPECT_EQ(r.at_2h, 160);
    EXPECT_NEAR(*r.area_2h, 3600 + 5400, 1e-9);
    EXPECT_NEAR(*r.area_3h, 3600 + 7200, 1e-9);
    EXPECT_EQ(r.back_to_start_minutes, 180);
    EXPECT_FALSE(r.cut_short);
    EXPECT_FALSE(r.not_at_rest);
}

TEST(MealResponse, stops_at_the_next_meal_over_10_g_and_says_so) {
    const CountedTrace trace = drawn_trace(moment(0, 8), moment(0, 18), 5min, tent);
    struct Row {
        double carbohydrate;
        bool cut;
    };
    for (const Row& row : {Row{10, false}, Row{10.5, true}}) {
        const auto occasions = eating_occasions(
            {meal(moment(0, 12), "rice", 60), meal(moment(0, 13, 30), "snack", row.carbohydrate)},
            zones);
        const MealResponse r = meal_response(occasions[0], &occasions[1], trace.view());
        EXPECT_EQ(r.cut_short, row.cut);
        EXPECT_EQ(r.window_minutes, row.cut ? 90 : 180);
        EXPECT_EQ(r.at_2h.has_value(), !row.cut);
        EXPECT_EQ(r.area_2h.has_value(), !row.cut);
        EXPECT_EQ(r.peak, 220);
    }
}

TEST(MealResponse, of_unknown_size_the_next_meal_cuts_short_too) {
    const CountedTrace trace = drawn_trace(moment(0, 8), moment(0, 18), 5min, tent);
    const auto occasions = eating_occasions(
        {meal(moment(0, 12), "rice", 60), entry(DiaryKind::meal, moment(0, 13, 30), "soup")},
        zones);
    EXPECT_TRUE(meal_response(occasions[0], &occasions[1], trace.view()).cut_short);
}

TEST(MealResponse, is_not_readable_with_the_reason) {
    const CountedTrace none_before = drawn_trace(moment(0, 12, 5), moment(0, 18), 5min, tent);
    EXPECT_EQ(meal_response(lunch(), nullptr, none_before.view()).not_readable,
              "no reading in the 15 minutes before the first bite");
    CountedTrace gap = drawn_trace(moment(0, 8), moment(0, 18), 5min, tent);
    std::erase_if(gap.readings, [](const Reading& reading) {
        return moment(0, 12, 30) <= reading.at && reading.at < moment(0, 12, 50);
    });
    EXPECT_EQ(meal_response(lunch(), nullptr, gap.view()).not_readable,
              "a gap of more than 20 minutes after the first bite");
    const CountedTrace ends = drawn_trace(moment(0, 8), moment(0, 12, 20), 5min, tent);
    EXPECT_EQ(meal_response(lunch(), nullptr, ends.view()).not_readable,
              "the sensor was not seen for an hour after the first bite");
    EatingOccasion unsure = lunch();
    unsure.time_uncertain = true;
    EXPECT_NE(meal_response(unsure, nullptr, gap.view()).not_readable, "");
}

TEST(MealResponse, a_gap_of_exactly_20_minutes_is_read) {
    CountedTrace gap = drawn_trace(moment(0, 8), moment(0, 18), 5min, tent);
    std::erase_if(gap.readings, [](const Reading& reading) {
        return moment(0, 12, 30) < reading.at && reading.at < moment(0, 12, 50);
    });
    EXPECT_EQ(meal_response(lunch(), nullptr, gap.view()).not_readable, "");
}

TEST(MealResponse, says_when_glucose_was_not_at_rest) {
    const auto climbing = [](double per_minute) {
        return drawn_trace(moment(0, 8), moment(0, 18), 5min, [=](Instant at) {
            return 150 + per_minute * minutes_since(moment(0, 12), at);
        });
    };
    EXPECT_FALSE(meal_response(lunch(), nullptr, climbing(0.3).view()).not_at_rest);
    EXPECT_TRUE(meal_response(lunch(), nullptr, climbing(1.1).view()).not_at_rest);
}

TEST(MealResponse, the_fifteen_minute_sensor_tells_the_same_tent) {
    const CountedTrace trace = drawn_trace(moment(0, 8), moment(0, 18), 15min, tent);
    const MealResponse r = meal_response(lunch(), nullptr, trace.view());
    EXPECT_EQ(r.rise, 120);
    EXPECT_NEAR(*r.area_3h, 10800, 1e-9);
}
