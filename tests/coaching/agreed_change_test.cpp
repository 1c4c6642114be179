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

// Safety rules 8, 9 and 13: filed as something else, a plan that fasts or a dose is what it is.
TEST(AgreedChange, filed_as_something_else_meets_the_gates_of_what_its_words_say) {
    Care care;
    AgreedChange change = whole();
    change.kind = Proposed::other;
    change.words = "inject 2 units less and skip breakfast";
    EXPECT_EQ(gates(care, change), 1U);
    EXPECT_EQ(gates(care, change, true), 1U);  // not even with the prescriber's answer on record
    care.takes("gliclazide 80");
    change.words = "earlier to bed";
    change.when = "at 22:00";
    change.if_not = "at 22:30";
    EXPECT_EQ(gates(care, change), 0U);
    for (const char* words :
         {"fast until noon", "skip breakfast", "low carb at dinner", "lose 5 kg"}) {
        change.words = words;
        EXPECT_GT(gates(care, change), 0U) << words;
    }
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
