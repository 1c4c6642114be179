#include "coaching/trial_offers.hpp"

#include "care_for_tests.hpp"
#include "coaching/before_after.hpp"
#include "coaching/client_review.hpp"
#include "coaching/expected_a1c.hpp"
#include "coaching/trial_calendar_page.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::HasSubstr;
using testing::Not;

QuestionAnswers offering(std::initializer_list<Cause> causes) {
    QuestionAnswers answers;
    for (const Cause cause : causes) {
        QuestionFinding told;
        told.cause = cause;
        told.finding.next = {NextStep::run_trial, "A trial would show it."};
        answers.findings.push_back(told);
    }
    return answers;
}

Next next_of(const Care& care, Cause cause, Licence licence = Licence::none) {
    QuestionAnswers answers = offering({cause});
    care.ask([&](const CareInput& in) {
        withhold_trials(answers, in, licence);
        return 0;
    });
    return answers.findings[0].finding.next;
}

TEST(TrialOffers, stand_where_every_gate_is_open) {
    for (const CauseFacts& facts : all_causes()) {
        EXPECT_EQ(next_of(Care{}, facts.cause).step, NextStep::run_trial) << facts.code;
    }
}

// Drink beside what can bring lows or ketoacidosis is the clinic's; a list not answered counts so.
TEST(TrialOffers, alcohol_beside_a_risky_medicine_is_for_the_clinic) {
    for (const char* medicine : {"gliclazide 80", "insulin glargine", "empagliflozin 10"}) {
        Care care;
        care.takes(medicine);
        const Next next = next_of(care, Cause::alcohol);
        EXPECT_EQ(next.step, NextStep::contact_prescriber) << medicine;
        EXPECT_THAT(next.sentence, HasSubstr("is for the clinic")) << medicine;
        EXPECT_EQ(next_of(care, Cause::sleep).step, NextStep::run_trial) << medicine;
    }
    Care open;
    open.facts.medicines_asked_on.reset();
    EXPECT_EQ(next_of(open, Cause::alcohol).step, NextStep::contact_prescriber);
}

// Safety rule 11: pregnant, planning, unsure or not answered.
TEST(TrialOffers, none_is_made_in_pregnancy_nor_where_it_is_not_answered) {
    for (const Pregnancy pregnancy :
         {Pregnancy::pregnant, Pregnancy::planning, Pregnancy::unsure, Pregnancy::not_answered}) {
        Care care;
        care.facts.cautions.pregnancy = pregnancy;
        const bool asked = pregnancy == Pregnancy::not_answered;
        for (const CauseFacts& facts : all_causes()) {
            const Next next = next_of(care, facts.cause);
            EXPECT_EQ(next.step, asked ? NextStep::ask_client : NextStep::contact_prescriber);
            EXPECT_THAT(next.sentence, HasSubstr("No trial is offered now."));
            EXPECT_THAT(next.sentence,
                        HasSubstr(asked ? "please ask" : "maternity or diabetes clinic leads"));
        }
    }
}

// Safety rules 8 to 12: each cause by what its trial would have the client do.
TEST(TrialOffers, each_cause_meets_the_gates_of_what_its_trial_would_have_the_client_do) {
    Care numb;
    numb.facts.cautions.numb_feet_or_wound = Answered::yes;
    EXPECT_THAT(next_of(numb, Cause::walk_after).sentence, HasSubstr("No trial is offered now."));
    EXPECT_EQ(next_of(numb, Cause::sleep).step, NextStep::run_trial);
    Care screened;
    screened.facts.cautions.eating.positive = Answered::yes;
    for (const Cause cause : {Cause::meal_carbohydrate, Cause::dinner_time, Cause::meal_energy}) {
        EXPECT_NE(next_of(screened, cause).step, NextStep::run_trial);
    }
    EXPECT_EQ(next_of(screened, Cause::walk_after).step, NextStep::run_trial);
    Care sglt2;
    sglt2.takes("empagliflozin 10");
    EXPECT_NE(next_of(sglt2, Cause::day_carbohydrate).step, NextStep::run_trial);
    EXPECT_EQ(next_of(sglt2, Cause::dinner_time).step, NextStep::run_trial);
}

TEST(TrialOffers, an_offer_in_a_review_is_taken_back_with_the_reason_wherever_it_stands) {
    FirstReview review;
    StandingQuestion question;
    question.told = offering({Cause::walk_after}).findings[0];
    question.told.finding.code = "dinner.walk-after";
    question.told.finding.question = "Is the rise smaller after a walk?";
    review.goes_with.questions = {question};
    Finding none;
    none.code = "goes_with";
    none.next = {NextStep::run_trial, "Is the rise smaller after a walk? A trial would show it."};
    Finding meals;
    meals.code = "meals";
    meals.next = {NextStep::run_trial, "The two by lot."};
    review.goes_with.leading = {question.told.finding, none, meals};
    review.findings = review.goes_with.leading;
    Care care;
    care.facts.cautions.pregnancy = Pregnancy::planning;
    care.ask([&](const CareInput& in) {
        withhold_trials(review, in, Licence::none);
        return 0;
    });
    for (const auto* list : {&review.goes_with.leading, &review.findings}) {
        for (const Finding& finding : *list) {
            EXPECT_NE(finding.next.step, NextStep::run_trial) << finding.code;
            EXPECT_THAT(finding.next.sentence, HasSubstr("No trial is offered now."));
        }
    }
    EXPECT_THAT(review.goes_with.leading[1].next.sentence,
                HasSubstr("Is the rise smaller after a walk? No trial"));
}

TEST(TrialOffers, of_a_trial_drawn_earlier_the_gates_are_those_of_today) {
    Trial trial;
    trial.code = "walk-after-dinner";
    trial.a = "walk 15 minutes";
    trial.b = "no walk";
    const auto gates = [&](const Care& care) {
        return care.ask([&](const CareInput& in) { return gates_before_trial_papers(trial, in); });
    };
    Care care;
    EXPECT_TRUE(gates(care).empty());
    care.facts.cautions.chest_symptoms = Answered::yes;
    ASSERT_EQ(gates(care).size(), 1U);
    EXPECT_EQ(gates(care)[0].kind, GateKind::chest);
    trial.code = "of-another-version";
    care.takes("empagliflozin 10");
    EXPECT_GE(gates(care).size(), 2U);  // the strictest there is: SGLT2 too
}

TEST(TrialOffers, a_change_is_taken_back_as_well) {
    Finding finding;
    finding.next = {NextStep::agree_change, "Agree on it."};
    Care care;
    care.facts.cautions.pregnancy = Pregnancy::pregnant;
    const auto gates =
        care.ask([](const CareInput& in) { return gates_before_offer(Proposed::other, {}, in); });
    EXPECT_TRUE(withhold_offer(finding, gates, Licence::none));
    EXPECT_THAT(finding.next.sentence, HasSubstr("It is not offered now."));
    EXPECT_FALSE(withhold_offer(finding, gates, Licence::none));
}

// One value wherever a sensor's own error is needed.
TEST(SensorError, is_the_same_before_and_after_and_behind_an_expected_a1c) {
    EXPECT_EQ(BeforeAfterSettings{}.sensor_sd, A1cSettings{}.sensor_sd);
}

}  // namespace
}  // namespace tracewright
