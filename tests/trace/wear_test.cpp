#include "trace/wear.hpp"

#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

std::vector<Reading> at_minutes(const std::vector<int>& minutes) {
    std::vector<Reading> readings;
    for (const int m : minutes) {
        readings.emplace_back(midnight + std::chrono::minutes{m}, mg(100), 0s);
    }
    return readings;
}

std::vector<Reading> steps(std::initializer_list<std::pair<int, int>> runs) {
    std::vector<int> minutes{0};
    for (const auto& [count, step] : runs) {
        for (int i = 0; i < count; ++i) {
            minutes.push_back(minutes.back() + step);
        }
    }
    return at_minutes(minutes);
}

}  // namespace

TEST(Wear, the_interval_is_the_most_common_step) {
    EXPECT_EQ(interval_found(steps({{20, 15}, {3, 4}})), 15min);
    EXPECT_EQ(interval_found(at_minutes({0})), 5min);
    EXPECT_EQ(interval_found({}), 5min);
}

TEST(Wear, seconds_of_drift_do_not_make_another_interval) {
    std::vector<Reading> readings;
    for (int i = 0; i < 50; ++i) {
        readings.emplace_back(midnight + 15min * i + std::chrono::seconds{i % 3}, mg(100), 0s);
    }
    EXPECT_EQ(interval_found(readings), 15min);
}

TEST(Wear, a_wear_that_mixes_intervals_weighs_each_stretch_by_its_own) {
    auto readings = steps({{60, 5}, {40, 15}, {30, 1}, {60, 5}});
    set_intervals(readings);
    EXPECT_EQ(readings[10].interval(), 5min);
    EXPECT_EQ(readings[80].interval(), 15min);
    EXPECT_EQ(readings[110].interval(), 1min);
    EXPECT_EQ(readings[150].interval(), 5min);
}

TEST(Wear, scans_between_regular_readings_keep_the_sensors_interval) {
    auto readings = steps({{20, 15}, {1, 4}, {1, 11}, {20, 15}});
    set_intervals(readings);
    for (const Reading& reading : readings) {
        EXPECT_EQ(reading.interval(), 15min);
    }
}

TEST(Wear, a_few_lost_readings_are_gaps_and_no_new_interval) {
    auto readings = steps({{60, 5}, {6, 10}, {60, 5}});
    set_intervals(readings);
    EXPECT_EQ(readings[63].interval(), 5min);
}

// T7: last reading 3 June 21:10, new sensor 4 June 18:00.
TEST(Wear, a_long_silence_begins_a_new_wear) {
    std::vector<Reading> readings;
    const Instant june{std::chrono::sys_days{std::chrono::year{2026} / 6 / 1}};
    for (Instant at = june + 8h; at <= june + 48h + 21h + 10min; at += 5min) {
        readings.emplace_back(at, mg(120), 0s);
    }
    for (Instant at = june + 72h + 18h; at < june + 120h; at += 15min) {
        readings.emplace_back(at, mg(120), 0s);
    }
    const auto wears = wears_of(readings, "trace.csv");
    ASSERT_EQ(wears.size(), 2U);
    EXPECT_EQ(wears[0].lasted(), 61h + 10min);
    EXPECT_EQ(wears[1].start - wears[0].readings.back().at, 20h + 50min);
    EXPECT_EQ(wears[0].interval, 5min);
    EXPECT_EQ(wears[1].interval, 15min);
    EXPECT_TRUE(wears_of({}, "none.csv").empty());
}
