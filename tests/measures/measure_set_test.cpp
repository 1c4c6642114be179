#include "measures/measure_set.hpp"

#include "measures/day_intervals.hpp"
#include "measures/risk_index.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/readings_for_tests.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>
#include <random>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;

namespace {

const ZoneHistory floating{Zone::floating()};

TraceView view_of(const std::vector<Reading>& readings) {
    return {readings, readings.front().at, readings.back().at + readings.back().interval()};
}

/// Random days: a slow wave, a level of each day, noise.
std::vector<Reading> random_days(int days, std::chrono::seconds interval, unsigned seed,
                                 GlucoseUnit unit = GlucoseUnit::mg_per_dl) {
    std::mt19937 random{seed};
    std::normal_distribution<double> noise{0, 1};
    std::vector<Reading> readings;
    double day_level = 0;
    for (Instant at = midnight; at < midnight + std::chrono::days{days}; at += interval) {
        if ((at - midnight) % 24h == 0s) {
            day_level = 140 + 15 * noise(random);
        }
        const double hours = static_cast<double>((at - midnight).count()) / 3600;
        double level = day_level + 40 * std::sin(hours / 24 * 6.283185) + 8 * noise(random);
        level = std::max(45.0, level);
        readings.emplace_back(at,
                              unit == GlucoseUnit::mg_per_dl ? mg(std::round(level))
                                                             : mmol(std::round(level / 1.8) / 10),
                              interval);
    }
    return readings;
}

double value(const Measures& measures, std::string_view name) {
    return find(measures, name)->value.value();
}

Measures measured(const std::vector<Reading>& readings, GlucoseUnit unit = GlucoseUnit::mg_per_dl) {
    return measures_of(view_of(readings), floating, {unit, true, 1});
}

}  // namespace

TEST(MeasureSet, an_empty_view_has_every_measure_absent_with_the_reason) {
    for (const Measure& measure : measures_of({{}, midnight, midnight + 24h}, floating, {})) {
        EXPECT_FALSE(measure.value.has_value()) << measure.name;
        EXPECT_FALSE(measure.absent_because.empty()) << measure.name;
    }
}

TEST(MeasureSet, every_value_has_an_interval_round_it_or_says_why_not) {
    for (const int days : {1, 2, 3, 14}) {
        for (const Measure& measure : measured(random_days(days, 5min, 7))) {
            if (!measure.value) {
                EXPECT_FALSE(measure.absent_because.empty()) << measure.name;
                continue;
            }
            EXPECT_NE(measure.interval95.has_value(), !measure.no_interval_because.empty())
                << measure.name;
            if (measure.interval95) {
                EXPECT_LE((*measure.interval95)[0], *measure.value) << measure.name << " " << days;
                EXPECT_GE((*measure.interval95)[1], *measure.value) << measure.name << " " << days;
                EXPECT_LT((*measure.interval95)[0], (*measure.interval95)[1])
                    << measure.name << " " << days;
                EXPECT_EQ(measure.days, days);
            }
        }
    }
}

// Safety promise 5.
TEST(MeasureSet, days_that_are_all_nought_or_all_hundred_still_have_an_interval) {
    const auto readings = every(5min, std::vector<double>(14 * 288, 120.0));
    const Measures measures = measured(readings);
    const auto& very_low = *find(measures, "very_low");
    EXPECT_EQ(*very_low.value, 0.0);
    ASSERT_TRUE(very_low.interval95.has_value());
    EXPECT_EQ((*very_low.interval95)[0], 0.0);
    // ln(20) / 14 days x 1 h of 24.
    EXPECT_NEAR((*very_low.interval95)[1], 2.9957 / 14 * 100 / 24, 1e-3);
    const auto& in_range = *find(measures, "in_range");
    EXPECT_EQ(*in_range.value, 100.0);
    ASSERT_TRUE(in_range.interval95.has_value());
    EXPECT_LT((*in_range.interval95)[0], 100.0);
}

// Every day half at 100 and half at 260: no difference of days to make an interval from.
TEST(MeasureSet, days_that_do_not_differ_say_so_and_have_no_interval_of_no_width) {
    std::vector<double> values;
    for (int i = 0; i < 14 * 96; ++i) {
        values.push_back(i % 96 < 48 ? 100.0 : 260.0);
    }
    const Measures measures = measured(every(15min, values));
    for (const char* name : {"mean", "sd", "in_range", "very_high", "gri"}) {
        const Measure& measure = *find(measures, name);
        EXPECT_TRUE(measure.value.has_value()) << name;
        EXPECT_FALSE(measure.interval95.has_value()) << name;
        EXPECT_NE(measure.no_interval_because.find("do not differ"), std::string::npos) << name;
    }
}

TEST(MeasureSet, the_same_input_and_seed_give_the_same_numbers) {
    const auto readings = random_days(14, 5min, 3);
    const Measures a = measured(readings);
    const Measures b = measured(readings);
    for (std::size_t i = 0; i < a.size(); ++i) {
        EXPECT_EQ(a[i].value, b[i].value);
        EXPECT_EQ(a[i].interval95, b[i].interval95) << a[i].name;
    }
}

// Method note, property 4: duplicating every reading moves no interval by more than 1 %.
TEST(MeasureSet, writing_each_five_minute_reading_as_five_of_a_minute_moves_no_interval) {
    const auto coarse = random_days(14, 5min, 11);
    std::vector<Reading> fine;
    for (const Reading& reading : coarse) {
        for (int i = 0; i < 5; ++i) {
            fine.emplace_back(reading.at + 1min * i, reading.value(), 1min);
        }
    }
    const Measures a = measured(coarse);
    const Measures b = measured(fine);
    for (const char* name :
         {"mean", "median", "cv", "in_range", "high", "lbgi", "hbgi", "gri", "modd"}) {
        EXPECT_NEAR(value(a, name), value(b, name), 0.002 * value(a, name)) << name;
        const auto& ia = *find(a, name)->interval95;
        const auto& ib = *find(b, name)->interval95;
        EXPECT_NEAR(ib[1] - ib[0], ia[1] - ia[0], 0.01 * (ia[1] - ia[0]) + 1e-9) << name;
    }
}

// Architecture rule 3: an extra reading between two takes its time from its neighbour.
TEST(MeasureSet, extra_readings_between_regular_ones_do_not_weigh_more) {
    std::vector<Reading> readings = every(15min, {100, 100, 100, 100});
    std::vector<Reading> with_scans = readings;
    with_scans.insert(with_scans.begin() + 1, Reading{midnight + 5min, mg(200), 15min});
    with_scans.insert(with_scans.begin() + 2, Reading{midnight + 10min, mg(200), 15min});
    // 5 of 60 minutes at 100 became 10 minutes at 200: 110, not the 133 of counting rows.
    EXPECT_NEAR(value(measured(with_scans), "mean"), (100 * 50 + 200 * 10) / 60.0, 1e-9);
}

TEST(MeasureSet, a_change_of_unit_scales_levels_and_leaves_shares_alone) {
    const auto readings = random_days(14, 15min, 5);
    const Measures in_mg = measured(readings);
    const Measures in_mmol = measured(readings, GlucoseUnit::mmol_per_l);
    for (const char* name : {"mean", "median", "sd", "mage", "modd", "conga1", "conga4", "mag"}) {
        EXPECT_NEAR(value(in_mg, name) / mg_per_dl_in_mmol_per_l, value(in_mmol, name), 1e-9)
            << name;
        EXPECT_NEAR((*find(in_mg, name)->interval95)[0] / mg_per_dl_in_mmol_per_l,
                    (*find(in_mmol, name)->interval95)[0], 1e-6)
            << name;
    }
    for (const char* name : {"cv", "gmi", "in_range", "low", "lbgi", "gri"}) {
        EXPECT_EQ(value(in_mg, name), value(in_mmol, name)) << name;
    }
}

TEST(MeasureSet, wears_of_different_units_are_measured_together) {
    std::vector<Reading> readings = every(5min, std::vector<double>(288, 180.0));
    for (int i = 0; i < 288; ++i) {
        readings.emplace_back(midnight + 24h + 5min * i, mmol(10.0), 5min);
    }
    const Measures measures = measured(readings);
    EXPECT_EQ(value(measures, "in_range"),
              100.0);  // 180 mg/dL and 10.0 mmol/L, each by its own edges
    EXPECT_NEAR(value(measures, "mean"), (180 + 180.16) / 2, 1e-9);
}

// glycaemia 2.7, worked by hand: 9 readings of 100 and one LOW at 40.
TEST(MeasureSet, censored_readings_count_in_bands_and_give_bounds) {
    std::vector<Reading> readings = every(5min, std::vector<double>(9, 100.0));
    readings.emplace_back(midnight + 45min, mg(40), 5min, Limit::below);
    const Measures measures = measured(readings);
    EXPECT_NEAR(value(measures, "very_low"), 10.0, 1e-9);
    const Measure& mean = *find(measures, "mean");
    EXPECT_NEAR(mean.censored_share, 0.1, 1e-12);
    ASSERT_TRUE(mean.bounds.has_value());
    EXPECT_NEAR((*mean.bounds)[0], (900 + 20) / 10.0, 1e-9);
    EXPECT_NEAR((*mean.bounds)[1], (900 + 40) / 10.0, 1e-9);
    EXPECT_FALSE(mean.value.has_value());  // 92 to 94 is more than 1 % of 94
    EXPECT_NE(mean.absent_because.find("1 %"), std::string::npos);
    EXPECT_TRUE(find(measures, "median")->value.has_value());
}

// ADRR is of a day's readings (Kovatchev 2006, 10.2337/dc06-1085): one that stands on over midnight
// is none of the next day's.
TEST(MeasureSet, the_daily_risk_range_takes_what_was_read_that_day) {
    const auto adrr_with_a_high_at = [](std::chrono::minutes high) {
        std::vector<Reading> readings;
        for (auto since = 3min; since < 48h; since += 5min) {
            readings.emplace_back(midnight + since, mg(since == high ? 350 : 110), 5min);
        }
        for (const Measure& one : measures_of(view_of(readings), floating, {})) {
            if (one.name == std::string_view("adrr")) {
                return *one.value;
            }
        }
        return -1.0;
    };
    const double at_noon = adrr_with_a_high_at(12h + 3min);
    EXPECT_GT(at_noon, 1);
    EXPECT_DOUBLE_EQ(adrr_with_a_high_at(23h + 58min), at_noon);
}

namespace {

std::vector<DayOfTrace> days_of_shares(const std::vector<double>& shares) {
    std::vector<DayOfTrace> days(shares.size());
    for (std::size_t i = 0; i < shares.size(); ++i) {
        days[i].date = CivilDate{std::chrono::days{20500 + static_cast<int>(i)}};
        days[i].valid = true;
        days[i].sums.seconds = 86400;
        days[i].sums.band_seconds[0] = 86400 * shares[i];
    }
    return days;
}

std::optional<std::array<double, 2>> interval_of(const std::vector<double>& shares) {
    double percent = 0;
    for (const double share : shares) {
        percent += 100 * share / static_cast<double>(shares.size());
    }
    const std::vector<DayOfTrace> days = days_of_shares(shares);
    return DayIntervals(days, 1).of_share(
        percent, [](const DayOfTrace& day) { return std::optional{day.sums.percent_in(0)}; });
}

}  // namespace

// Of a fortnight's 1,344 readings one quarter hour makes a day one of 100 %: it says no more of the
// other days than a day of 99 %.
TEST(MeasureSet, one_day_all_in_range_does_not_widen_the_interval_of_the_others) {
    std::vector<double> shares;
    for (const int out : {9, 12, 10, 14, 8, 11, 13, 9, 12, 10, 11, 8, 13, 1}) {
        shares.push_back(1 - out / 96.0);
    }
    const auto near = interval_of(shares);
    shares.back() = 1;
    const auto at = interval_of(shares);
    ASSERT_TRUE(near && at);
    EXPECT_LT((*at)[1] - (*at)[0], 1.2 * ((*near)[1] - (*near)[0]));
    EXPECT_GT((*at)[0], 100 * (1 - 14 / 96.0));
}

// Lows of a few hours on one day of five: most days are at 0. A half counted in quarter hours
// covered 61 % here.
TEST(MeasureSet, the_interval_of_a_share_that_most_days_have_none_of_covers_it) {
    std::mt19937 random{20260302};
    std::uniform_real_distribution<double> lot{0, 1};
    constexpr int draws = 300;
    constexpr double truth = 100 * 0.2 * (1.0 + 2.0 + 3.0 + 4.0) / 4 / 24;
    for (const int days : {14, 28}) {
        int covered = 0;
        int counted = 0;
        for (int draw = 0; draw < draws; ++draw) {
            std::vector<double> shares;
            for (int day = 0; day < days; ++day) {
                const double hours = std::ceil(4 * lot(random));
                shares.push_back(lot(random) < 0.2 ? hours / 24 : 0);
            }
            if (const auto interval = interval_of(shares)) {
                ++counted;
                covered += (*interval)[0] <= truth && truth <= (*interval)[1] ? 1 : 0;
            }
        }
        EXPECT_GE(covered, 0.9 * counted) << days;
    }
}

// A small share of one day of ten: less than was seen may well be the truth.
TEST(MeasureSet, the_interval_of_a_small_share_ends_below_what_was_seen) {
    std::vector<Reading> readings = random_days(10, 5min, 7);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const bool low = i == 1000 || i == 1001;
        readings[i] = Reading{readings[i].at, mg(low ? 50 : 130), 5min};
    }
    bool seen = false;
    for (const Measure& one : measures_of(view_of(readings), floating, {})) {
        if (one.name == std::string_view("very_low")) {
            ASSERT_TRUE(one.value && one.interval95);
            EXPECT_LT((*one.interval95)[0], *one.value);
            EXPECT_GE((*one.interval95)[0], 0);
            seen = true;
        }
        if (one.name == std::string_view("in_range")) {
            EXPECT_GT((*one.interval95)[1], *one.value);
            EXPECT_LE((*one.interval95)[1], 100);
        }
    }
    EXPECT_TRUE(seen);
}

// Ours: how readings differ that all lie beyond a limit, or most of them, is not known.
TEST(MeasureSet, variation_is_left_open_where_most_of_the_time_was_beyond_the_limit) {
    for (const int censored : {10, 6, 5}) {
        SCOPED_TRACE(censored);
        std::vector<Reading> readings = every(5min, std::vector<double>(10, 400.0));
        for (int i = 0; i < censored; ++i) {
            Reading& reading = readings[static_cast<std::size_t>(i)];
            reading = Reading{reading.at, mg(400), 5min, Limit::above};
        }
        const Measures measures = measured(readings);
        for (const char* name : {"sd", "cv", "mag", "gvp"}) {
            const Measure& measure = *find(measures, name);
            EXPECT_FALSE(measure.value.has_value()) << name;
            EXPECT_EQ(measure.absent_because.starts_with("most of the time seen"), censored > 5)
                << name << ": " << measure.absent_because;
            EXPECT_EQ(measure.bounds.has_value(), censored == 5) << name;
        }
        EXPECT_EQ(value(measures, "very_high"), 100);
    }
}

TEST(MeasureSet, a_clock_window_takes_only_its_hours) {
    std::vector<double> values;
    for (int day = 0; day < 5; ++day) {
        for (int i = 0; i < 96; ++i) {
            values.push_back(i < 24 ? 90.0 : 150.0);
        }
    }
    const auto readings = every(15min, values);
    const Measures night = measures_in_clock_window(view_of(readings), floating, 0h, 6h, {});
    EXPECT_EQ(value(night, "mean"), 90.0);
    EXPECT_FALSE(find(night, "mage")->value.has_value());
    EXPECT_EQ(find(night, "mage")->absent_because, "given over whole days only");
}

TEST(MeasureSet, weekdays_and_weekends_part_the_days) {
    std::vector<double> values;
    for (int day = 0; day < 14; ++day) {  // from Monday 2 March 2026
        values.insert(values.end(), 96, day % 7 >= 5 ? 200.0 : 100.0);
    }
    const auto readings = every(15min, values);
    EXPECT_EQ(value(measures_on(view_of(readings), floating, DayKind::weekday, {}), "mean"), 100.0);
    EXPECT_EQ(value(measures_on(view_of(readings), floating, DayKind::weekend, {}), "mean"), 200.0);
}

TEST(MeasureSet, a_day_of_25_hours_counts_its_25_hours) {
    const ZoneHistory berlin{*Zone::named("Europe/Berlin")};
    const CivilDay day = berlin.day_of(std::chrono::local_days{std::chrono::year{2025} / 10 / 26});
    std::vector<Reading> readings;
    for (Instant at = day.from; at < day.to; at += 5min) {
        readings.emplace_back(at, at < day.from + 3h ? mg(60) : mg(100), 5min);
    }
    const Measures measures = measures_of({readings, day.from, day.to}, berlin, {});
    EXPECT_NEAR(value(measures, "low"), 100 * 3.0 / 25, 1e-9);
    // The night 00:00 to 06:00 had seven hours, three of them low.
    const Measures night =
        measures_in_clock_window({readings, day.from, day.to}, berlin, 0h, 6h, {});
    EXPECT_NEAR(value(night, "low"), 100 * 3.0 / 7, 1e-9);
}

// A second, naive way for the core, over random regular days.
RC_GTEST_PROP(MeasureSet, agrees_with_counting_rows_on_a_regular_grid, ()) {
    const int n = *rc::gen::inRange(2, 600);
    std::vector<double> values;
    for (int i = 0; i < n; ++i) {
        values.push_back(*rc::gen::inRange(40, 401));
    }
    const auto readings = every(5min, values);
    const Measures measures =
        measures_of(view_of(readings), floating, {GlucoseUnit::mg_per_dl, false, 1});
    double sum = 0;
    double low_risk = 0;
    int below_70 = 0;
    int in_range = 0;
    for (const double v : values) {
        sum += v;
        low_risk += risk_of(v).low;
        below_70 += v >= 54 && v < 70 ? 1 : 0;
        in_range += v >= 70 && v <= 180 ? 1 : 0;
    }
    const double mean = sum / n;
    double squares = 0;
    for (const double v : values) {
        squares += (v - mean) * (v - mean);
    }
    RC_ASSERT(std::abs(value(measures, "mean") - mean) < 1e-9);
    RC_ASSERT(std::abs(value(measures, "sd") - std::sqrt(squares / (n - 1))) < 1e-6);
    RC_ASSERT(std::abs(value(measures, "low") - 100.0 * below_70 / n) < 1e-9);
    RC_ASSERT(std::abs(value(measures, "in_range") - 100.0 * in_range / n) < 1e-9);
    RC_ASSERT(std::abs(value(measures, "lbgi") - low_risk / n) < 1e-9);
}

RC_GTEST_PROP(MeasureSet, adding_a_constant_moves_the_mean_and_no_spread, ()) {
    std::vector<double> values;
    std::vector<double> moved;
    for (int i = 0; i < 3 * 96; ++i) {
        values.push_back(*rc::gen::inRange(80, 200));
        moved.push_back(values.back() + 50);
    }
    const Measures a =
        measures_of(view_of(every(15min, values)), floating, {GlucoseUnit::mg_per_dl, false, 1});
    const auto later = every(15min, moved);
    const Measures b = measures_of(view_of(later), floating, {GlucoseUnit::mg_per_dl, false, 1});
    RC_ASSERT(std::abs(value(b, "mean") - value(a, "mean") - 50) < 1e-9);
    for (const char* name : {"sd", "modd", "conga1", "mag"}) {
        RC_ASSERT(std::abs(value(b, name) - value(a, name)) < 1e-6);
    }
}
