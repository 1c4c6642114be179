#include "measures/goals.hpp"

#include <gtest/gtest.h>

using namespace tracewright;

// Battelino et al. 2019, Diabetes Care 42:1593, 10.2337/dci19-0028; "50 % above" from memory.
TEST(Goals, are_those_the_consensus_prints) {
    const Goals adults = consensus_goals(GoalKind::adults);
    EXPECT_EQ(adults.in_range_above, 70);
    EXPECT_EQ(adults.below_range_below, 4);
    EXPECT_EQ(adults.very_low_below, 1);
    EXPECT_EQ(adults.above_range_below, 25);
    EXPECT_EQ(adults.very_high_below, 5);
    const Goals older = consensus_goals(GoalKind::older_or_high_risk);
    EXPECT_EQ(older.in_range_above, 50);
    EXPECT_EQ(older.below_range_below, 1);
    EXPECT_EQ(older.very_low_below, std::nullopt);
    EXPECT_EQ(older.above_range_below, 50);
    EXPECT_EQ(older.very_high_below, 10);
}

TEST(Goals, pregnancy_has_none_here) {
    EXPECT_EQ(consensus_goals(GoalKind::pregnancy).in_range_above, std::nullopt);
    EXPECT_EQ(consensus_goals(GoalKind::pregnancy).below_range_below, std::nullopt);
}
