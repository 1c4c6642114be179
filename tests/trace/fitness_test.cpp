#include "trace/fitness.hpp"

#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <random>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

std::vector<Reading> full(Instant from, Instant to, std::chrono::seconds interval = 5min) {
    std::vector<Reading> readings;
    for (Instant at = from; at < to; at += interval) {
        readings.emplace_back(at, mg(120), interval);
    }
    return readings;
}

const ZoneHistory floating{Zone::floating()};

}  // namespace

// T5: 26 October 2025 has 25 hours and 300 readings at 5 minutes.
TEST(Fitness, a_day_of_25_hours_with_all_its_readings_is_wholly_covered) {
    const ZoneHistory berlin{*Zone::named("Europe/Berlin")};
    const CivilDay day = berlin.day_of(std::chrono::local_days{std::chrono::year{2025} / 10 / 26});
    const auto readings = full(day.from, day.to);
    EXPECT_EQ(readings.size(), 300U);
    const Fitness fitness = fitness_of({readings, day.from, day.to}, berlin, "the day");
    EXPECT_EQ(fitness.active_percent(), 100.0);
    EXPECT_EQ(fitness.valid_days, 1);
    EXPECT_EQ(fitness.by_hour[2].sensed, 2h);
}

TEST(Fitness, a_missing_night_every_night_shows_by_the_hour) {
    std::vector<Reading> readings;
    for (int day = 0; day < 14; ++day) {
        const auto waking =
            full(midnight + std::chrono::days{day} + 6h, midnight + std::chrono::days{day + 1});
        readings.insert(readings.end(), waking.begin(), waking.end());
    }
    const Fitness fitness =
        fitness_of({readings, midnight, midnight + std::chrono::days{14}}, floating, "14 days");
    EXPECT_EQ(fitness.active_percent(), 75.0);
    EXPECT_EQ(fitness.hours_seen_on_fewer_than(5), (std::vector<int>{0, 1, 2, 3, 4, 5}));
    EXPECT_EQ(fitness.longest_gap, 6h);
}

// The last reading of the evening stands a little into the next day, which was not seen.
TEST(Fitness, an_hour_counts_a_day_only_where_a_reading_was_taken) {
    const auto readings = full(midnight + 7min, midnight + 24h, 15min);
    const Fitness fitness =
        fitness_of({readings, midnight + 7min, midnight + 24h + 7min}, floating, "the wear");
    EXPECT_EQ(fitness.days, 1);
    EXPECT_EQ(fitness.by_hour[0].days_with_readings, 1);
    EXPECT_EQ(fitness.by_hour[0].sensed, 60min);
}

// Minimum counts for 14 days at 70 %: Battelino et al. 2019, arithmetic.
TEST(Fitness, seventy_per_cent_of_fourteen_days_is_enough_and_one_reading_less_is_not) {
    for (const bool enough : {true, false}) {
        const auto interval = 15min;
        std::vector<Reading> readings;
        const int wanted = enough ? 941 : 940;
        for (int i = 0; i < 1344 && static_cast<int>(readings.size()) < wanted; ++i) {
            if (i % 96 < 68 || i >= 1344 - 28) {
                readings.emplace_back(midnight + interval * i, mg(120), interval);
            }
        }
        ASSERT_EQ(static_cast<int>(readings.size()), wanted);
        const Fitness fitness =
            fitness_of({readings, midnight, midnight + std::chrono::days{14}}, floating, "14 days");
        EXPECT_EQ(sufficiency_of(fitness)[0].enough, enough);
    }
}

// T8: 8 of 14 days (57 %).
TEST(Fitness, eight_of_fourteen_days_settle_neither_lows_nor_spread) {
    const auto readings = full(midnight, midnight + std::chrono::days{8});
    const Fitness fitness =
        fitness_of({readings, midnight, midnight + std::chrono::days{14}}, floating, "14 days");
    EXPECT_NEAR(fitness.active_percent(), 57.14, 0.01);
    for (const Sufficiency& answer : sufficiency_of(fitness)) {
        EXPECT_FALSE(answer.enough) << answer.sentence;
        EXPECT_EQ(answer.days_have, 8);
    }
    EXPECT_EQ(sufficiency_of(fitness, GlucoseUnit::mmol_per_l)[1].sentence.find(
                  "Hours between 3.9 and 7.8 mmol/L (70 and 140 mg/dL): "),
              0U);
    EXPECT_NE(sufficiency_of(fitness)[2].sentence.find("needs about 21 days or more"),
              std::string::npos);
}

TEST(Fitness, an_empty_window_is_no_coverage_and_no_division) {
    const Fitness fitness = fitness_of({{}, midnight, midnight}, floating, "nothing");
    EXPECT_EQ(fitness.active_percent(), 0.0);
    EXPECT_EQ(fitness.days, 0);
}

// The plain way: every hour of every day cut out of the trace by itself.
RC_GTEST_PROP(Fitness, agrees_with_cutting_out_every_hour, (unsigned seed)) {
    std::mt19937 draw(seed);
    ZoneHistory zones{*Zone::named("Europe/Berlin")};
    const Instant starts[] = {std::chrono::sys_days{std::chrono::year{2026} / 3 / 27},
                              std::chrono::sys_days{std::chrono::year{2025} / 10 / 24}};
    const Instant start = starts[draw() % 2] + std::chrono::minutes{draw() % 3000};
    if (draw() % 2 == 0) {
        zones.change(start + std::chrono::minutes{draw() % 4000},
                     *Zone::named(draw() % 2 == 0 ? "America/New_York" : "Asia/Tokyo"));
    }
    std::vector<Reading> readings;
    for (Instant at = start; readings.size() < 100 + draw() % 900;
         at += std::chrono::seconds{draw() % 20 == 0 ? draw() % 20'000 : 300}) {
        if (readings.empty() || readings.back().at < at) {
            readings.emplace_back(at, mg(120), 5min, Limit::none, draw() % 30 == 0);
        }
    }
    const TraceView view{readings, readings.front().at + std::chrono::minutes{draw() % 200},
                         readings.back().at + 5min};
    std::array<Fitness::Hour, 24> by_hour{};
    std::chrono::seconds all{0};
    for (const CivilDay& day : zones.days(view.window())) {
        for (int h = 0; h < 24; ++h) {
            const Interval hour = intersection(
                zones.clock_window(day, std::chrono::hours{h}, std::chrono::hours{h + 1}),
                view.window());
            const TraceView within = cut(view, hour);
            Fitness::Hour& of_clock = by_hour[static_cast<std::size_t>(h)];
            of_clock.possible += hour.length();
            of_clock.sensed += sensed(within);
            of_clock.days_with_readings += readings_within(within).empty() ? 0 : 1;
            all += sensed(within);
        }
    }
    const Fitness fitness = fitness_of(view, zones, "the window");
    RC_ASSERT(fitness.sensed == all);
    for (std::size_t h = 0; h < 24; ++h) {
        RC_ASSERT(fitness.by_hour[h].possible == by_hour[h].possible);
        RC_ASSERT(fitness.by_hour[h].sensed == by_hour[h].sensed);
        RC_ASSERT(fitness.by_hour[h].days_with_readings == by_hour[h].days_with_readings);
    }
}
