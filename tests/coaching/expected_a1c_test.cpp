// How A1c remembers and what the next one may be. Rows and sources:
// tests/data/statistics-checks.csv (a1c-01 to a1c-04) and tests/data/glycaemia-checks.csv
// (a1c-lin-120, a1c-lin-106, a1c-half, a1c-tahara).
#include "coaching/expected_a1c.hpp"

#include "coaching/red_cell_memory.hpp"
#include "inference/statistics_row.hpp"
#include "measures/check_table.hpp"
#include "measures/glucose_indicator.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

constexpr CivilDate today{std::chrono::days{20'500}};

std::vector<DayMean> days_of(int from_ago, int to_ago, double level) {
    std::vector<DayMean> days;
    for (int ago = from_ago; ago > to_ago; --ago) {
        days.push_back({today - std::chrono::days{ago}, level + (ago % 2 == 0 ? 8.0 : -8.0)});
    }
    return days;
}

CheckRow glycaemia_row(const std::string& id) {
    for (const CheckRow& row :
         check_rows(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/data/glycaemia-checks.csv")) {
        if (row.id == id) {
            return row;
        }
    }
    throw std::out_of_range(id);
}

}  // namespace

TEST(RedCellMemory, a1c_01_shares_of_120_days_and_the_half_time_of_a_step) {
    const RedCellMemory memory;
    const auto row = statistics_row("a1c-01");
    const auto shares = row.after("0-14");
    EXPECT_EQ(memory.share(0, 30), 0.4375);
    EXPECT_EQ(memory.share(30, 60), 0.3125);
    EXPECT_EQ(memory.share(60, 120), 0.25);
    EXPECT_EQ(memory.share(90, 120), 0.0625);
    EXPECT_NEAR(memory.share(0, 14), shares[0], 1e-9);
    EXPECT_NEAR(memory.half_time(), row.after("step")[0], 1e-9);
    EXPECT_EQ(memory.share(0, 500), 1);
    EXPECT_EQ(memory.share(130, 500), 0);
}

TEST(RedCellMemory, months_by_lifespan_and_the_rule_of_thumb) {
    for (const char* id : {"a1c-lin-120", "a1c-lin-106"}) {
        const CheckRow row = glycaemia_row(id);
        const RedCellMemory memory(row.number("lifespan_d"));
        const auto expected = CheckRow::numbers(row.expected);
        for (std::size_t month = 0; month < 4; ++month) {
            const double from = 30.0 * static_cast<double>(month);
            EXPECT_NEAR(100 * memory.share(from, from + 30), expected[month], row.within()) << id;
        }
    }
    // The second number is the exponential of a half-time of 35.2 days, which is not used.
    const CheckRow half = glycaemia_row("a1c-half");
    EXPECT_NEAR(100 * RedCellMemory().share(0, 14), CheckRow::numbers(half.expected)[0], 0.01);
    EXPECT_NEAR(100 * (1 - std::exp2(-14 / 35.2)), CheckRow::numbers(half.expected)[1], 0.01);
    const CheckRow thumb = glycaemia_row("a1c-tahara");
    EXPECT_NEAR(mean_by_rule_of_thumb(thumb.number("mean_0_30"), thumb.number("mean_30_60"),
                                      thumb.number("mean_60_120")),
                std::stod(thumb.expected), thumb.within());
}

// a1c-02: the line. a1c-03: a step from 180 to 150 mg/dL shows by the memory's share.
TEST(RedCellMemory, a1c_02_and_a1c_03_the_line_and_a_step_through_it) {
    const auto means = statistics_row("a1c-02").numbers();
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(a1c_from_average(means[i]).percent, 5.0 + static_cast<double>(i), 0.002);
    }
    const auto expected = statistics_row("a1c-03").numbers();
    const double after[] = {14, 30, 60, 90, 120};
    for (std::size_t i = 0; i < 5; ++i) {
        const double mean = 180 - 30 * RedCellMemory().share(0, after[i]);
        EXPECT_NEAR(a1c_from_average(mean).percent, expected[i], 1e-6) << after[i];
    }
}

TEST(PersonalOffset, a1c_04_is_shrunk_by_the_pairs_own_error) {
    const auto row = statistics_row("a1c-04");
    const auto weights = row.after("B");
    const auto deviations = row.after("sd");
    const double pair_sd = std::hypot(0.15, 0.15);
    for (std::size_t k = 1; k <= 3; ++k) {
        const PersonalOffset offset = personal_offset(std::vector<double>(k, 0.6), 0.45, pair_sd);
        EXPECT_NEAR(offset.weight, weights[k - 1], 1e-9);
        EXPECT_NEAR(offset.sd, deviations[k - 1], 1e-9);
        EXPECT_NEAR(offset.value, 0.6 * weights[k - 1], 1e-9);
    }
    EXPECT_EQ(personal_offset({}, 0.45, 0).sd, 0.45);
}

TEST(ExpectedA1c, without_a_past_result_the_range_is_about_a_point_to_either_side) {
    const auto days = days_of(14, 0, 154);
    const ExpectedA1c found = expected_a1c(days, {}, today, today);
    EXPECT_TRUE(found.none_because.empty());
    EXPECT_NEAR(found.percent, 7.0, 0.02);  // 154 mg/dL: Nathan et al. 2008
    EXPECT_EQ(found.days_seen, 14);
    EXPECT_NEAR(found.weight_seen, RedCellMemory().share(0, 14), 1e-9);
    EXPECT_NEAR(found.interval95[1] - found.percent, 1.1, 0.2);
}

TEST(ExpectedA1c, two_past_pairs_bring_in_the_own_gap_and_narrow_the_range) {
    auto days = days_of(200, 180, 154);
    const auto more = days_of(110, 90, 154);
    const auto last = days_of(14, 0, 154);
    days.insert(days.end(), more.begin(), more.end());
    days.insert(days.end(), last.begin(), last.end());
    const std::vector<A1cResult> past = {{today - std::chrono::days{179}, 7.6, false},
                                         {today - std::chrono::days{89}, 7.6, false},
                                         {today - std::chrono::days{300}, 9, false}};  // no days
    const ExpectedA1c own = expected_a1c(days, past, today + std::chrono::days{60}, today);
    const ExpectedA1c without = expected_a1c(days, {}, today + std::chrono::days{60}, today);
    EXPECT_EQ(own.offset.pairs, 2);
    EXPECT_GT(own.percent, 7.3);
    EXPECT_LT(own.percent, 7.6);
    EXPECT_LT(own.sd, 0.8 * without.sd);
    EXPECT_EQ(without.offset.value, 0);
}

TEST(ExpectedA1c, needs_ten_days_of_the_last_sixty) {
    EXPECT_FALSE(expected_a1c(days_of(9, 0, 154), {}, today, today).none_because.empty());
    EXPECT_FALSE(expected_a1c(days_of(90, 70, 154), {}, today, today).none_because.empty());
    EXPECT_FALSE(expected_a1c({}, {}, today, today).none_because.empty());
    EXPECT_TRUE(expected_a1c(days_of(10, 0, 154), {}, today, today).none_because.empty());
}

// Constant glucose gives the line whatever the memory; every day pulls its own way.
RC_GTEST_PROP(ExpectedA1c, constant_glucose_gives_the_line_and_more_on_a_day_never_gives_less, ()) {
    const double level = *rc::gen::inRange(80, 300);
    const double lifespan = *rc::gen::inRange(90, 131);
    const int ago = *rc::gen::inRange(1, 30);
    std::vector<DayMean> days;
    for (int day = 30; day > 0; --day) {
        days.push_back({today - std::chrono::days{day}, level});
    }
    A1cSettings settings;
    settings.lifespan_days = lifespan;
    const ExpectedA1c flat = expected_a1c(days, {}, today, today, settings);
    RC_ASSERT(std::abs(flat.percent - a1c_from_average(level).percent) < 1e-9);
    days[static_cast<std::size_t>(30 - ago)].mg_per_dl += 50;
    RC_ASSERT(expected_a1c(days, {}, today, today, settings).percent > flat.percent);
}

TEST(A1cResults, either_scale_is_read_and_held_against_its_own_limit) {
    const std::vector<LabResult> labs = {{today, "HbA1c", 48, "mmol/mol"},
                                         {today - std::chrono::days{9}, "A1c", 6.5, "%"},
                                         {today, "HbA1c", 47, "mmol/mol"},
                                         {today, "HbA1c", 0.065, "%"},
                                         {today, "weight", 80, "kg"}};
    const auto found = a1c_results(labs);
    ASSERT_EQ(found.size(), 3U);
    EXPECT_FALSE(found[0].under_6_5());
    EXPECT_EQ(found[1].words(), "6.5 % (48 mmol/mol)");
    EXPECT_FALSE(found[1].under_6_5());
    EXPECT_TRUE(found[2].under_6_5());
    ClientFacts facts;
    EXPECT_TRUE(a1c_doubted_because(facts).empty());
    facts.cautions.others = "Iron deficiency Anaemia, treated";
    EXPECT_EQ(a1c_doubted_because(facts).size(), 2U);
}
