#include "responses/unwritten_rise.hpp"

#include "responses/days_for_tests.hpp"
#include "responses/meal_kernel.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

const ZoneHistory zones{Zone::floating()};

CountedTrace with_rise_at(Instant start, double size, std::chrono::minutes step = 5min) {
    return drawn_trace(moment(0, 0), moment(2, 0), step, [=](Instant at) {
        return 110 + size * meal_kernel(minutes_since(start, at), 45);
    });
}

}  // namespace

TEST(UnwrittenRise, is_asked_about_where_there_is_no_entry) {
    for (const auto step : {5min, 15min}) {
        const CountedTrace trace = with_rise_at(moment(0, 16), 60, step);
        const auto found = unwritten_rises(trace.view(), {}, {}, zones);
        ASSERT_EQ(found.size(), 1U);
        EXPECT_LE(std::abs(minutes_since(moment(0, 16), found[0].from)), 20);
        EXPECT_GE(found[0].rise, 45);
    }
}

TEST(UnwrittenRise, under_two_and_a_half_mmol_is_none) {
    EXPECT_TRUE(unwritten_rises(with_rise_at(moment(0, 16), 40).view(), {}, {}, zones).empty());
}

TEST(UnwrittenRise, with_an_entry_near_is_none) {
    const CountedTrace trace = with_rise_at(moment(0, 16), 60);
    for (const int minute : {-110, -30, 0, 25}) {
        const auto occasions = eating_occasions(
            {meal(moment(0, 16) + std::chrono::minutes{minute}, "juice", 30)}, zones);
        EXPECT_TRUE(unwritten_rises(trace.view(), occasions, {}, zones).empty()) << minute;
    }
}

TEST(UnwrittenRise, the_dawn_rise_is_none) {
    EXPECT_TRUE(unwritten_rises(with_rise_at(moment(0, 5), 60).view(), {}, {}, zones).empty());
    const Diary late = {slept(moment(0, 1), moment(0, 9))};
    EXPECT_TRUE(
        unwritten_rises(with_rise_at(moment(0, 9, 30), 60).view(), {}, late, zones).empty());
}

TEST(UnwrittenRise, out_of_a_low_is_none) {
    const CountedTrace trace = drawn_trace(moment(0, 0), moment(2, 0), 5min, [](Instant at) {
        const double minutes = minutes_since(moment(0, 16), at);
        return minutes > -60 && minutes <= 0 ? 60 : 60 + 60 * meal_kernel(minutes, 45) + 5;
    });
    const auto found = unwritten_rises(trace.view(), {}, {}, zones);
    EXPECT_TRUE(found.empty());
}
