#include "coaching/client_facts.hpp"

#include <gtest/gtest.h>

namespace tracewright {
namespace {

// Safety rule 11.
TEST(GoalsThatHold, pregnant_planning_or_unsure_has_none_of_ours) {
    ClientFacts facts;
    for (const Pregnancy state : {Pregnancy::pregnant, Pregnancy::planning, Pregnancy::unsure}) {
        facts.cautions.pregnancy = state;
        EXPECT_EQ(goals_that_hold(facts).kind, GoalKind::pregnancy);
        EXPECT_FALSE(goals_that_hold(facts).in_range_above);
    }
    for (const Pregnancy state : {Pregnancy::no, Pregnancy::not_answered}) {
        facts.cautions.pregnancy = state;
        EXPECT_EQ(goals_that_hold(facts).kind, GoalKind::adults);
    }
}

TEST(ClientFacts, nothing_is_answered_before_it_was_asked) {
    const ClientFacts facts;
    EXPECT_EQ(facts.cautions.eating.positive, Answered::not_yet);
    EXPECT_EQ(facts.cautions.pregnancy, Pregnancy::not_answered);
    EXPECT_FALSE(facts.medicines_asked_on);
}

}  // namespace
}  // namespace tracewright
