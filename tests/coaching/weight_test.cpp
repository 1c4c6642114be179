#include "coaching/weight.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

CivilDate day(int number) {
    return CivilDate{std::chrono::days{20'000 + number}};
}

// One pound is 0.45359237 kg exactly (international agreement of 1959), one stone 14 pounds.
TEST(Weights, are_told_in_kg_by_date_and_slips_of_unit_are_passed_over) {
    const std::vector<LabResult> labs{{day(9), "weight", 14, "st"},
                                      {day(1), "Body weight", 200, "lb"},
                                      {day(2), "weight", 90, "stone-ish"},
                                      {day(3), "weight", 9000, "kg"},
                                      {day(4), "HbA1c", 48, "mmol/mol"}};
    const auto weights = weights_of(labs);
    ASSERT_EQ(weights.size(), 2U);
    EXPECT_NEAR(weights[0].kg, 90.718474, 1e-9);
    EXPECT_NEAR(weights[1].kg, 88.90410452, 1e-9);
}

struct FallRow {
    double to;
    int after_days;
    bool falls;
};
// 5 %: safety rule 10; 26 weeks: our own rule.
TEST(WeightFall, five_percent_within_26_weeks_is_one) {
    for (const FallRow& row : {FallRow{95, 182, true}, FallRow{95.01, 182, false},
                               FallRow{95, 183, false}, FallRow{110, 10, false}}) {
        const std::vector<Weight> weights{{day(0), 100}, {day(row.after_days), row.to}};
        EXPECT_EQ(weight_fall(weights, day(400)).has_value(), row.falls) << row.to;
    }
    const std::vector<Weight> pounds{{day(0), 200 * 0.45359237}, {day(5), 190 * 0.45359237}};
    EXPECT_TRUE(weight_fall(pounds, day(9)));
    EXPECT_FALSE(weight_fall(pounds, day(4)));
    EXPECT_FALSE(weight_fall({}, day(4)));
}

TEST(WeightFall, is_from_the_heaviest_in_reach_and_the_last_one_is_told) {
    const std::vector<Weight> weights{{day(0), 98}, {day(20), 100}, {day(40), 97}, {day(60), 94}};
    const auto fall = weight_fall(weights, day(100));
    ASSERT_TRUE(fall);
    EXPECT_EQ(fall->from.on, day(20));
    EXPECT_EQ(fall->to.on, day(60));
    EXPECT_NEAR(fall->percent, 6, 1e-9);
}

}  // namespace
}  // namespace tracewright
