#include "trace/suspect.hpp"

#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

Wear wear_with(std::vector<Reading> readings) {
    return wears_of(std::move(readings), "test").front();
}

std::vector<Mark> of(const std::vector<Mark>& marks, MarkReason reason) {
    std::vector<Mark> found;
    std::copy_if(marks.begin(), marks.end(), std::back_inserter(found),
                 [&](const Mark& mark) { return mark.reason == reason; });
    return found;
}

std::vector<double> gentle_days(int days, double noise_of_last_day) {
    std::mt19937 random{20260302};
    std::uniform_real_distribution<double> noise{-1, 1};
    std::vector<double> values;
    for (int i = 0; i < days * 288; ++i) {
        const double size = i >= (days - 1) * 288 ? noise_of_last_day : 2.0;
        values.push_back(140 + size * noise(random));
    }
    return values;
}

}  // namespace

TEST(Suspect, the_first_hour_is_warm_up_and_the_hour_is_a_setting) {
    const Wear wear = wear_with(every(5min, std::vector<double>(100, 110)));
    const auto marks = of(suspect_stretches(wear), MarkReason::warm_up);
    ASSERT_EQ(marks.size(), 1U);
    EXPECT_EQ(marks[0].stretch, (Interval{midnight, midnight + 60min}));
    const auto longer = suspect_stretches(wear, {.warm_up = 120min});
    EXPECT_EQ(of(longer, MarkReason::warm_up)[0].stretch.length(), 120min);
}

TEST(Suspect, a_rate_of_five_mg_per_dl_a_minute_is_believed_and_more_is_not) {
    EXPECT_TRUE(of(suspect_stretches(wear_with(every(5min, {100, 100, 125, 125}))),
                   MarkReason::impossible_rate)
                    .empty());
    const auto marks = of(suspect_stretches(wear_with(every(5min, {100, 100, 126, 126}))),
                          MarkReason::impossible_rate);
    ASSERT_EQ(marks.size(), 1U);
    EXPECT_EQ(marks[0].stretch, (Interval{midnight + 5min, midnight + 15min}));
}

TEST(Suspect, a_step_of_one_minute_is_judged_over_five) {
    EXPECT_TRUE(
        of(suspect_stretches(wear_with(every(1min, {100, 100, 100, 100, 100, 108, 101, 100}))),
           MarkReason::impossible_rate)
            .empty());
    EXPECT_FALSE(
        of(suspect_stretches(wear_with(every(1min, {100, 100, 100, 100, 100, 130, 130, 130}))),
           MarkReason::impossible_rate)
            .empty());
}

TEST(Suspect, a_jump_across_a_silence_is_no_rate) {
    auto readings = every(5min, {100, 100});
    readings.emplace_back(midnight + 2h, mg(250), 5min);
    EXPECT_TRUE(of(suspect_stretches(wear_with(readings)), MarkReason::impossible_rate).empty());
}

TEST(Suspect, the_same_value_for_three_hours_is_stuck_and_a_little_less_is_not) {
    std::vector<double> values(20, 100);
    for (int i = 0; i < 20; ++i) {
        values[static_cast<std::size_t>(i)] += i % 2;
    }
    auto stuck = values;
    stuck.insert(stuck.end(), 36, 140.0);
    EXPECT_EQ(of(suspect_stretches(wear_with(every(5min, stuck))), MarkReason::stuck).size(), 1U);
    auto nearly = values;
    nearly.insert(nearly.end(), 35, 140.0);
    EXPECT_TRUE(of(suspect_stretches(wear_with(every(5min, nearly))), MarkReason::stuck).empty());
}

TEST(Suspect, a_last_day_rougher_than_the_days_before_is_marked) {
    EXPECT_EQ(of(suspect_stretches(wear_with(every(5min, gentle_days(7, 20.0)))),
                 MarkReason::failing_last_day)
                  .size(),
              1U);
    EXPECT_TRUE(of(suspect_stretches(wear_with(every(5min, gentle_days(7, 2.0)))),
                   MarkReason::failing_last_day)
                    .empty());
}

TEST(Suspect, a_pressure_dip_is_never_named_from_readings_alone) {
    std::vector<double> night(60, 130.0);
    for (int i = 30; i < 36; ++i) {
        night[static_cast<std::size_t>(i)] = 60.0;
    }
    EXPECT_TRUE(
        of(suspect_stretches(wear_with(every(5min, night))), MarkReason::pressure_dip).empty());
}

TEST(Suspect, a_coach_marks_what_the_readings_hide_and_counts_what_they_mark) {
    const Wear wear = wear_with(every(5min, std::vector<double>(100, 110)));
    const Interval hidden{midnight + 200min, midnight + 230min};
    const Interval before_it{midnight - 24h, midnight + 30min};
    const Interval warm_up{midnight, midnight + 60min};
    const auto marks = suspect_stretches(
        wear, {.told = {{hidden, true, "slept on it"}, {before_it, true, "other sensor"}}});
    const auto told = of(marks, MarkReason::told);
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told[0].stretch, (Interval{midnight, midnight + 30min}));
    EXPECT_EQ(told[1].stretch, hidden);
    EXPECT_EQ(told[1].seen, "by the coach's word, not by the readings");
    EXPECT_EQ(of(marks, MarkReason::warm_up).size(), 1U);
    // Counted after all is what was marked from just there to there.
    EXPECT_TRUE(
        of(suspect_stretches(wear, {.told = {{warm_up, false, "agrees"}}}), MarkReason::warm_up)
            .empty());
    EXPECT_EQ(
        of(suspect_stretches(wear, {.told = {{before_it, false, "agrees"}}}), MarkReason::warm_up)
            .size(),
        1U);
    EXPECT_EQ(of(suspect_stretches(wear, {.told = {{hidden, true, "a"}, {hidden, false, "b"}}}),
                 MarkReason::told)
                  .size(),
              1U);
}

TEST(Suspect, implausible_values_are_marked) {
    auto readings = every(5min, {100, 101});
    readings.emplace_back(midnight + 10min, mg(650), 5min, Limit::none, true);
    EXPECT_EQ(of(suspect_stretches(wear_with(readings)), MarkReason::implausible).size(), 1U);
}

// The plain way: every reading against the last one five minutes or more before it.
RC_GTEST_PROP(Suspect, rates_agree_with_looking_back_from_every_reading, (unsigned seed)) {
    std::mt19937 draw(seed);
    std::vector<Reading> readings;
    const auto step = std::chrono::minutes{std::array{1, 5, 15}[draw() % 3]};
    const bool in_mg = draw() % 2 == 0;
    Instant at = midnight;
    for (int i = 0; i < 300; ++i) {
        const int level = 100 + static_cast<int>(draw() % 60);
        const bool other = draw() % 20 == 0;
        readings.emplace_back(at, in_mg != other ? mg(level) : mmol(level / 18.0), step,
                              draw() % 40 == 0 ? Limit::above : Limit::none);
        at += step * (draw() % 30 == 0 ? 5 : 1);
    }
    Wear wear = wear_with(readings);
    std::vector<Interval> expected;
    for (std::size_t i = 1; i < wear.readings.size(); ++i) {
        const Reading& later = wear.readings[i];
        std::size_t j = i - 1;
        while (j > 0 && later.at - wear.readings[j].at < 5min) {
            --j;
        }
        const Reading& before = wear.readings[j];
        const auto apart = later.at - before.at;
        const double change = std::abs(
            later.value().in(GlucoseUnit::mg_per_dl)-before.value().in(GlucoseUnit::mg_per_dl));
        const bool silence = 2 * apart > 3 * std::max<std::chrono::seconds>(later.interval(), 5min);
        if (apart < 5min || silence || later.censored() || before.censored() ||
            change <= 5.0 * static_cast<double>(apart.count()) / 60) {
            continue;
        }
        const Interval stretch{before.at, later.at + later.interval()};
        if (!expected.empty() && expected.back().to >= stretch.from) {
            expected.back().to = std::max(expected.back().to, stretch.to);
        } else {
            expected.push_back(stretch);
        }
    }
    const auto found = of(suspect_stretches(wear), MarkReason::impossible_rate);
    RC_ASSERT(found.size() == expected.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        RC_ASSERT(found[i].stretch == expected[i]);
    }
}
