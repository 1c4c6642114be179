// What is agreed, and how it ended. Everybody in here is invented.
#include "coaching/agreed_change.hpp"

#include "coaching/care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

namespace {

AgreedChange whole() {
    AgreedChange change{"a walk with the dog", care_day, care_day + std::chrono::days{14}};
    change.when = "right after dinner";
    change.where = "round the park";
    change.how_often = "five evenings a week";
    change.if_not = "the stairs, twice";
    change.how_checked = "hours in range of the next wear";
    change.stop_when = "unwell, or glucose low";
    change.kind = Proposed::walking;
    return change;
}

std::size_t gates(const Care& care, const AgreedChange& change, bool with_prescriber = false) {
    return care
        .ask([&](const CareInput& asked) {
            return gates_before_agreeing(change, with_prescriber, asked);
        })
        .size();
}

}  // namespace

TEST(AgreedChange, is_agreed_whole_or_says_what_is_lacking) {
    EXPECT_TRUE(lacking(whole()).empty());
    EXPECT_THAT(lacking({}), ElementsAre("what", "when", "where", "how often", "if not",
                                         "how checked", "stop when", "check on"));
    AgreedChange change = whole();
    change.if_not.clear();
    EXPECT_THAT(lacking(change), ElementsAre("if not"));
    EXPECT_THAT(change_words(change), HasSubstr("a walk with the dog; when: right after dinner"));
}

TEST(AgreedChange, meets_the_gates_of_its_kind_and_of_all_its_words) {
    Care care;
    EXPECT_EQ(gates(care, whole()), 0U);
    AgreedChange pills = whole();
    pills.if_not = "half a tablet of metformin";
    EXPECT_EQ(gates(care, pills), 1U);
    AgreedChange stop = whole();
    stop.stop_when = "the clinic changes my metformin";
    EXPECT_EQ(gates(care, stop), 0U);
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    EXPECT_EQ(gates(care, whole()), 1U);
}

TEST(AgreedChange, made_with_the_prescriber_is_opened_by_the_answer_on_record) {
    Care care;
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    EXPECT_EQ(gates(care, whole(), true), 1U);
    care.facts.prescriber_answers = {
        {AskedAbout::walking, true, "Dr Larch", care_day - std::chrono::days{2}, {}}};
    EXPECT_EQ(gates(care, whole(), true), 0U);
    EXPECT_EQ(gates(care, whole(), false), 1U);  // an offer of ours stays closed (rule 9)
}

TEST(AgreedChange, ended_ones_are_kept_with_how_and_when) {
    ClientFacts facts;
    EXPECT_FALSE(end_agreed_change(facts, ChangeOutcome::kept, care_day));
    facts.agreed_change = whole();
    EXPECT_FALSE(end_agreed_change(facts, ChangeOutcome::open, care_day));
    ASSERT_TRUE(end_agreed_change(facts, ChangeOutcome::dropped, care_day));
    EXPECT_FALSE(facts.agreed_change);
    ASSERT_EQ(facts.earlier_changes.size(), 1U);
    EXPECT_EQ(facts.earlier_changes[0].outcome, ChangeOutcome::dropped);
    EXPECT_EQ(facts.earlier_changes[0].ended_on, care_day);
    EXPECT_EQ(facts.earlier_changes[0].words, "a walk with the dog");
}
