#include "serve/shown_readings.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>

namespace tracewright::testing {
namespace {

using std::chrono::minutes;

constexpr Instant midnight{std::chrono::sys_days{std::chrono::year{2026} / 3 / 2}};

Reading reading_at(minutes since, std::int32_t mg_per_dl, Limit limit = Limit::none) {
    return {midnight + since, {100 * mg_per_dl, GlucoseUnit::mg_per_dl}, minutes{5}, limit};
}

std::vector<ShownReading> extremes(std::span<const Reading> readings) {
    return shown_readings(readings, GlucoseUnit::mg_per_dl, Detail::extremes_of_hours);
}

TEST(ShownReadings, each_stands_in_the_unit_asked_for_and_tells_what_is_missing_before_it) {
    const std::vector readings = {reading_at(minutes{0}, 100), reading_at(minutes{5}, 180),
                                  reading_at(minutes{25}, 90)};
    const auto shown = shown_readings(readings, GlucoseUnit::mmol_per_l, Detail::each_reading);
    ASSERT_EQ(shown.size(), 3U);
    EXPECT_EQ(shown[1].level, 999);
    EXPECT_EQ(shown[1].missing_from, std::nullopt);
    EXPECT_EQ(shown[2].missing_from, midnight + minutes{10});
}

TEST(ShownReadings, of_an_hour_the_lowest_and_the_highest_stay_in_the_order_of_time) {
    const std::vector readings = {reading_at(minutes{0}, 100),  reading_at(minutes{5}, 140),
                                  reading_at(minutes{10}, 80),  reading_at(minutes{15}, 110),
                                  reading_at(minutes{60}, 120), reading_at(minutes{65}, 120)};
    const auto shown = extremes(readings);
    ASSERT_EQ(shown.size(), 3U);
    EXPECT_EQ(shown[0].level, 14'000);
    EXPECT_EQ(shown[1].level, 8'000);
    EXPECT_EQ(shown[2].at, midnight + minutes{60});
}

TEST(ShownReadings, a_reading_beyond_the_limit_goes_before_a_level_at_it) {
    const std::vector readings = {reading_at(minutes{0}, 40), reading_at(minutes{5}, 90),
                                  reading_at(minutes{10}, 40, Limit::below)};
    const auto shown = extremes(readings);
    ASSERT_EQ(shown.size(), 2U);
    EXPECT_EQ(shown[1].limit, Limit::below);
}

TEST(ShownReadings, a_gap_parts_an_hour) {
    const std::vector readings = {reading_at(minutes{0}, 100), reading_at(minutes{5}, 90),
                                  reading_at(minutes{30}, 95), reading_at(minutes{35}, 99)};
    const auto shown = extremes(readings);
    ASSERT_EQ(shown.size(), 4U);
    EXPECT_EQ(shown[2].missing_from, midnight + minutes{10});
    EXPECT_EQ(shown[3].missing_from, std::nullopt);
}

RC_GTEST_PROP(ShownReadings, extremes_are_what_a_search_of_each_hour_finds, ()) {
    std::vector<Reading> readings;
    minutes since{0};
    for (const int step : *rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 40))) {
        since += minutes{step};
        readings.push_back(reading_at(since, *rc::gen::inRange(40, 60)));
    }
    // The naive way: whatever stands between two gaps within one hour, by a map.
    std::map<std::pair<int, long>, std::pair<std::int32_t, std::int32_t>> found;
    int stretch = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (i > 0 && readings[i].at - readings[i - 1].at > minutes{7} + std::chrono::seconds{30}) {
            ++stretch;
        }
        const std::int32_t level = readings[i].hundredths();
        const auto [it, is_new] = found.try_emplace(
            {stretch, readings[i].at.time_since_epoch().count() / 3600}, level, level);
        it->second = {std::min(it->second.first, level), std::max(it->second.second, level)};
    }
    std::vector<std::int32_t> expected;
    for (const auto& [_, levels] : found) {
        expected.push_back(levels.first);
        if (levels.first != levels.second) {
            expected.push_back(levels.second);
        }
    }
    const auto shown = extremes(readings);
    std::vector<std::int32_t> levels;
    for (const ShownReading& one : shown) {
        levels.push_back(one.level);
    }
    RC_ASSERT(std::ranges::is_sorted(shown, {}, &ShownReading::at));
    RC_ASSERT(std::ranges::count_if(
                  shown, [](const auto& one) { return one.missing_from.has_value(); }) == stretch);
    std::ranges::sort(levels);
    std::ranges::sort(expected);
    RC_ASSERT(levels == expected);
}

}  // namespace
}  // namespace tracewright::testing
