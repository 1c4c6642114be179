#include "trace/trace_view.hpp"

#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

TEST(TraceView, a_reading_stands_until_the_next_if_that_is_within_one_and_a_half_intervals) {
    struct Row {
        std::chrono::seconds until_next, stands;
    };
    const Row rows[] = {
        {4min, 4min}, {5min, 5min}, {7min + 30s, 7min + 30s}, {7min + 31s, 5min}, {1h, 5min}};
    for (const Row& row : rows) {
        const Reading first{midnight, mg(100), 5min};
        const Reading next{midnight + row.until_next, mg(100), 5min};
        EXPECT_EQ(standing_time(first, &next), row.stands) << row.until_next.count();
    }
    EXPECT_EQ(standing_time(Reading{midnight, mg(100), 15min}, nullptr), 15min);
}

TEST(TraceView, nothing_stands_past_the_window_and_what_stood_at_its_start_counts) {
    const auto readings = every(5min, {100, 110, 120});
    const TraceView whole{readings, midnight, midnight + 15min};
    const TraceView part = cut(whole, {midnight + 3min, midnight + 8min});
    EXPECT_EQ(part.readings.front().at, midnight);
    EXPECT_EQ(sensed(part), 5min);
    EXPECT_EQ(readings_within(part).size(), 1U);
}

TEST(TraceView, implausible_readings_take_no_time) {
    auto readings = every(5min, {100, 110});
    readings.emplace_back(midnight + 10min, mg(700), 5min, Limit::none, true);
    EXPECT_EQ(sensed({readings, midnight, midnight + 15min}), 10min);
}

TEST(TraceView, an_empty_view_senses_nothing) {
    EXPECT_EQ(sensed({{}, midnight, midnight + 24h}), 0s);
    EXPECT_TRUE(cut({{}, midnight, midnight + 24h}, {midnight, midnight + 1h}).readings.empty());
}

RC_GTEST_PROP(TraceView, cutting_anywhere_counts_no_second_twice_and_loses_none, ()) {
    std::vector<Reading> readings;
    Instant at = midnight;
    for (int i = *rc::gen::inRange(0, 60); i > 0; --i) {
        readings.emplace_back(at, mg(*rc::gen::inRange(40, 400)), 5min);
        at += std::chrono::seconds{*rc::gen::inRange(1, 900)};
    }
    const TraceView whole{readings, midnight, at};
    const Instant middle = midnight + std::chrono::seconds{*rc::gen::inRange(0, 30000)};
    RC_ASSERT(sensed(cut(whole, {midnight, middle})) + sensed(cut(whole, {middle, at})) ==
              sensed(whole));
}
