#include "measures/episodes.hpp"

#include "measures/time_in_bands.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

std::vector<Episode> of(const std::vector<Reading>& readings, EpisodeKind kind) {
    std::vector<Episode> found = episodes_of(view_of(readings));
    std::erase_if(found, [&](const Episode& e) { return e.kind != kind; });
    return found;
}

}  // namespace

TEST(Episodes, a_recovery_shorter_than_fifteen_minutes_does_not_split) {
    const auto lows =
        of(every(5min, {80, 69, 68, 67, 72, 73, 69, 66, 65, 80, 82, 84}), EpisodeKind::low);
    ASSERT_EQ(lows.size(), 1U);
    EXPECT_EQ(lows[0].lasted, 40min);
    EXPECT_FALSE(lows[0].end_not_seen);
}

TEST(Episodes, a_recovery_of_fifteen_minutes_splits) {
    EXPECT_EQ(
        of(every(5min, {60, 60, 60, 80, 80, 80, 60, 60, 60, 80, 80, 80}), EpisodeKind::low).size(),
        2U);
}

TEST(Episodes, silence_ends_an_episode_as_not_seen_and_adds_no_minutes) {
    auto readings = every(5min, {80, 60, 60, 60});
    readings.emplace_back(midnight + 2h, mg(60), 5min);
    readings.emplace_back(midnight + 2h + 5min, mg(60), 5min);
    readings.emplace_back(midnight + 2h + 10min, mg(60), 5min);
    const auto lows = of(readings, EpisodeKind::low);
    ASSERT_EQ(lows.size(), 2U);
    EXPECT_EQ(lows[0].lasted, 15min);
    EXPECT_TRUE(lows[0].end_not_seen);
    EXPECT_TRUE(lows[1].start_not_seen);
    EXPECT_TRUE(lows[1].end_not_seen);
}

TEST(Episodes, a_gap_shorter_than_twenty_minutes_goes_on_but_adds_nothing) {
    auto readings = every(5min, {80, 60, 60});
    readings.emplace_back(midnight + 24min, mg(60), 5min);  // 14 minutes after the last
    readings.emplace_back(midnight + 29min, mg(60), 5min);
    for (int i = 0; i < 3; ++i) {
        readings.emplace_back(midnight + 34min + 5min * i, mg(100), 5min);
    }
    const auto lows = of(readings, EpisodeKind::low);
    ASSERT_EQ(lows.size(), 1U);
    EXPECT_EQ(lows[0].lasted, 20min);  // four readings of five minutes; nine minutes were not seen
    EXPECT_FALSE(lows[0].end_not_seen);
}

TEST(Episodes, one_reading_of_fifteen_minutes_is_an_episode_of_a_single_reading) {
    const auto lows = of(every(15min, {100, 60, 100, 100}), EpisodeKind::low);
    ASSERT_EQ(lows.size(), 1U);
    EXPECT_TRUE(lows[0].single_reading);
}

TEST(Episodes, level_one_counts_contain_level_two) {
    const auto readings = every(5min, {80, 50, 50, 50, 80, 80, 80});
    EXPECT_EQ(of(readings, EpisodeKind::low).size(), 1U);
    EXPECT_EQ(of(readings, EpisodeKind::very_low).size(), 1U);
}

TEST(Episodes, low_and_high_words_are_the_outermost) {
    std::vector<Reading> readings = every(5min, {100});
    for (int i = 1; i <= 3; ++i) {
        readings.emplace_back(midnight + 5min * i, mg(60), 5min, Limit::below);
    }
    readings.emplace_back(midnight + 20min, mg(100), 5min);
    readings.emplace_back(midnight + 25min, mg(100), 5min);
    readings.emplace_back(midnight + 30min, mg(100), 5min);
    EXPECT_EQ(of(readings, EpisodeKind::very_low).size(), 1U);
}

TEST(Episodes, extended_high_is_ninety_minutes_within_two_hours) {
    std::vector<double> values(6, 200.0);
    values.insert(values.end(), 18, 260.0);  // 90 minutes
    values.insert(values.end(), 6, 150.0);
    EXPECT_EQ(of(every(5min, values), EpisodeKind::extended_high).size(), 1U);
    values[6] = 240;  // 85 minutes
    EXPECT_TRUE(of(every(5min, values), EpisodeKind::extended_high).empty());
}

TEST(Episodes, nothing_seen_is_no_episode) {
    EXPECT_TRUE(episodes_of({{}, midnight, midnight + 1h}).empty());
    EXPECT_TRUE(cut_short_very_lows({{}, midnight, midnight + 1h}).empty());
}

TEST(Episodes, a_short_very_low_between_seen_readings_is_not_cut_short) {
    EXPECT_TRUE(cut_short_very_lows(view_of(every(5min, {80, 80, 50, 80, 80}))).empty());
}

TEST(Episodes, a_short_very_low_at_an_end_or_beside_a_gap_is_told) {
    EXPECT_EQ(cut_short_very_lows(view_of(every(5min, {80, 80, 50}))).size(), 1U);
    EXPECT_EQ(cut_short_very_lows(view_of(every(5min, {50, 80, 80}))).size(), 1U);
    auto readings = every(5min, {80, 50});
    readings.emplace_back(midnight + 16min, mg(80), 5min);  // 11 minutes later: 6 not seen
    EXPECT_EQ(cut_short_very_lows(view_of(readings)).size(), 1U);
}

// What was not seen between them may have been low too: neither reading may be passed over.
TEST(Episodes, very_low_readings_on_both_sides_of_a_silence_are_both_told) {
    for (const auto unseen : {8min, 12min, 180min}) {
        auto readings = every(5min, {100, 100, 50});
        readings.emplace_back(midnight + 10min + unseen, mg(52), 5min);
        readings.emplace_back(midnight + 15min + unseen, mg(100), 5min);
        const auto told = cut_short_very_lows(view_of(readings));
        ASSERT_EQ(told.size(), 2U) << unseen.count();
        EXPECT_TRUE(told[0].end_not_seen);
        EXPECT_TRUE(told[1].start_not_seen);
        EXPECT_EQ(told[0].lasted, 5min);
        EXPECT_EQ(told[0].extreme.hundredths(), 5000);
    }
}

// The naive way: on a grid without gaps an episode is a run of at least three lows, runs less than
// three readings apart being one.
RC_GTEST_PROP(Episodes, agree_with_a_naive_count_on_a_regular_grid, ()) {
    std::vector<double> values;
    for (int i = *rc::gen::inRange(1, 200); i > 0; --i) {
        values.push_back(*rc::gen::inRange(60, 85));
    }
    int naive = 0;
    int run = 0;
    int recovered = 3;
    bool open = false;
    for (const double v : values) {
        if (v < 70) {
            ++run;
            recovered = 0;
            if (run == 3 && !open) {
                open = true;
                ++naive;
            }
        } else {
            run = 0;
            if (++recovered == 3) {
                open = false;
            }
        }
    }
    RC_ASSERT(static_cast<int>(of(every(5min, values), EpisodeKind::low).size()) == naive);
}

// Time in an episode is never more than time low plus recoveries shorter than fifteen minutes.
RC_GTEST_PROP(Episodes, never_last_longer_than_the_trace_was_seen, ()) {
    std::vector<Reading> readings;
    Instant at = midnight;
    for (int i = *rc::gen::inRange(1, 100); i > 0; --i) {
        readings.emplace_back(at, mg(*rc::gen::inRange(40, 90)), 5min);
        at += std::chrono::minutes{*rc::gen::inRange(1, 40)};
    }
    std::chrono::seconds total{0};
    for (const Episode& episode : of(readings, EpisodeKind::low)) {
        RC_ASSERT(episode.lasted >= 15min);
        RC_ASSERT(episode.lasted <= episode.to - episode.from);
        total += episode.lasted;
    }
    RC_ASSERT(total <= sensed(view_of(readings)));
}
