// What is agreed, and how it ended. Everybody in here is invented.
#include "coaching/agreed_change.hpp"

#include "coaching/candidate_changes.hpp"
#include "coaching/care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace tracewright;
using ::testing::Contains;
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

std::vector<GateKind> kinds(const Care& care, const AgreedChange& change) {
    std::vector<GateKind> all;
    for (const Gate& gate : care.ask(
             [&](const CareInput& asked) { return gates_before_agreeing(change, false, asked); })) {
        all.push_back(gate.kind);
    }
    return all;
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
    for (std::string AgreedChange::*part :
         {&AgreedChange::when, &AgreedChange::where, &AgreedChange::how_often,
          &AgreedChange::if_not, &AgreedChange::how_checked, &AgreedChange::stop_when}) {
        AgreedChange change = whole();
        change.*part = "below 6: one gliclazide less that day";
        EXPECT_EQ(gates(care, change), 1U);
        change.*part = "halve the evening one and look";
        EXPECT_EQ(gates(care, change), 1U);
    }
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
    change.does = {EatingChange::nothing, Answered::no, Answered::no};
    EXPECT_EQ(gates(care, change), 0U);
    for (const char* words :
         {"fast until noon", "skip breakfast", "low carb at dinner", "lose 5 kg"}) {
        change.words = words;
        EXPECT_GT(gates(care, change), 0U) << words;
    }
}

// Safety rules 8, 9 and 12: what was not answered counts as yes.
TEST(AgreedChange, in_a_coachs_own_words_meets_every_gate_that_an_answer_leaves_open) {
    Care care;
    AgreedChange change = whole();
    change.words = "as we said on Monday";
    change.when = "in the evening";
    change.where = "at home";
    change.if_not = "the next day";
    for (const Proposed kind : {Proposed::other, Proposed::food_change}) {
        change.kind = kind;
        change.does = {};
        EXPECT_THAT(kinds(care, change), ElementsAre(GateKind::names_a_medicine));
        change.does = {EatingChange::nothing, Answered::no, Answered::yes};
        EXPECT_THAT(kinds(care, change), ElementsAre(GateKind::names_a_medicine));
        for (const char* medicine : {"insulin glargine", "gliclazide 80", "empagliflozin 10"}) {
            Care takes;
            takes.takes(medicine);
            change.does = {EatingChange::not_answered, Answered::no, Answered::no};
            EXPECT_THAT(kinds(takes, change), Contains(GateKind::what_it_does)) << medicine;
            EXPECT_GE(gates(takes, change), 2U) << medicine;
            change.does.eating = EatingChange::less;
            EXPECT_GE(gates(takes, change), 1U) << medicine;
            change.does.eating = EatingChange::as_much;
            EXPECT_EQ(gates(takes, change), 0U) << medicine;
            change.words = "half portions at each meal";  // whatever is answered
            EXPECT_GE(gates(takes, change), 2U) << medicine;
            change.words = "as we said on Monday";
        }
        Care screened;
        screened.facts.cautions.eating.positive = Answered::yes;
        change.does = {EatingChange::as_much, Answered::no, Answered::no};
        EXPECT_THAT(kinds(screened, change), Contains(GateKind::eating));
        Care chest;
        chest.facts.cautions.chest_symptoms = Answered::yes;
        change.does = {EatingChange::nothing, Answered::not_yet, Answered::no};
        EXPECT_THAT(kinds(chest, change), ElementsAre(GateKind::what_it_does, GateKind::chest));
        change.does.moves = Answered::yes;
        EXPECT_THAT(kinds(chest, change), ElementsAre(GateKind::chest));
        change.does.moves = Answered::no;
        EXPECT_EQ(gates(chest, change), 0U);
    }
}

TEST(AgreedChange, that_a_candidate_tells_is_asked_nothing) {
    Care care;
    care.takes("insulin glargine");
    AgreedChange change = whole();
    change.words = "in bed by 22:30";
    change.if_not = "by 23:00";
    change.kind = Proposed::other;
    change.candidate = "longer-sleep";
    EXPECT_EQ(gates(care, change), 0U);
    change.words = "half portions at each meal";
    EXPECT_GT(gates(care, change), 0U);
    for (const CandidateChange& one : candidate_changes()) {
        change.words = one.words;
        change.kind = one.proposed;
        change.candidate = one.code;
        change.does = {};
        Care free_of_all;
        EXPECT_EQ(gates(free_of_all, change), 0U) << one.code;
        if (one.proposed == Proposed::food_change) {
            EXPECT_EQ(gates(care, change), 0U) << one.code;
        }
    }
}

// One that was kept before these questions were asked goes on; its page waits for the answers.
TEST(AgreedChange, kept_without_answers_goes_on_but_is_printed_only_where_nothing_may_close) {
    Care care;
    AgreedChange change = whole();
    change.words = "as we said on Monday";
    change.if_not = "the next day";
    change.kind = Proposed::other;
    care.facts.agreed_change = change;
    const auto printing = [&] {
        return care.ask([&](const CareInput& asked) {
            return gates_before_printing(*asked.facts.agreed_change, asked);
        });
    };
    EXPECT_TRUE(care.ask(goes_on_as_agreed));
    EXPECT_TRUE(printing().empty());
    care.takes("insulin glargine");
    EXPECT_TRUE(care.ask(goes_on_as_agreed));
    EXPECT_FALSE(printing().empty());
    care.facts.agreed_change->words = "half portions at each meal";  // what its words say is told
    EXPECT_FALSE(care.ask(goes_on_as_agreed));
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
