#include "coaching/client_review.hpp"

#include "care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tracewright {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

/// Escalations as they stand when first seen now, none of them answered.
std::vector<StandingEscalation> standing(const Care& care) {
    return care.ask([](const CareInput& in) {
        std::vector<StandingEscalation> all;
        const LadderInput ladder{in.wears, in.diary, in.medicines, in.clock, GlucoseUnit::mg_per_dl,
                                 {}};
        for (const Escalation& one : escalations(ladder)) {
            all.push_back({one, in.as_of, {}, static_cast<std::int64_t>(all.size()) + 1});
        }
        return all;
    });
}

FirstReview review_of(const Care& care, std::vector<StandingEscalation> escalations) {
    ClientReviewInput input;
    input.name = "Invented Alder";
    input.facts = care.facts;
    input.review.wears = care.wears;
    input.review.diary = care.diary;
    input.review.zones = care.clock;
    input.review.as_of = care.as_of;
    input.escalations = std::move(escalations);
    return client_review(std::move(input));
}

FirstReview review_of(const Care& care) {
    return review_of(care, standing(care));
}

const Finding* finding_of(const FirstReview& review, std::string_view code) {
    const auto found = std::ranges::find(review.findings, code, &Finding::code);
    return found == review.findings.end() ? nullptr : &*found;
}

/// 50 minutes below 54 mg/dL from 02:40 on, six nights ago (T9).
Care with_a_night_low(const std::string& medicine) {
    Care care;
    care.takes(medicine);
    Care::set(care.wears[0], 8 * 288 + 32, 9, 45);
    Care::set(care.wears[0], 8 * 288 + 41, 1, 53);
    return care;
}

TEST(ClientReview, of_a_night_low_on_a_sulfonylurea_opens_with_it_and_names_no_dose) {
    const Care care = with_a_night_low("gliclazide MR 60");
    const FirstReview review = review_of(care);
    ASSERT_FALSE(review.findings.empty());
    const Finding& first = review.findings.front();
    EXPECT_EQ(first.code, "very_low");
    EXPECT_THAT(first.sentence, HasSubstr("Tue 10 February 02:40"));
    EXPECT_THAT(first.sentence, HasSubstr("One is not acknowledged yet."));
    ASSERT_FALSE(first.caveats.empty());
    EXPECT_THAT(first.caveats.back().sentence, HasSubstr("at least one that can cause lows"));
    for (const Finding& finding : review.findings) {
        EXPECT_THAT(finding.next.sentence, Not(HasSubstr("dose")));
    }
}

TEST(ClientReview, tells_who_answered_and_stops_asking) {
    const Care care = with_a_night_low("gliclazide");
    auto escalations = standing(care);
    for (StandingEscalation& one : escalations) {
        one.answer = "Wed 11 February 09:10, Sorrel: rang the client and the prescriber";
    }
    const FirstReview review = review_of(care, escalations);
    EXPECT_EQ(review.findings.front().code, "very_low");  // still leads
    EXPECT_THAT(review.findings.front().sentence, HasSubstr("Acknowledged: Wed 11 February"));
    EXPECT_THAT(review.findings.front().sentence, Not(HasSubstr("not acknowledged")));
    EXPECT_EQ(finding_of(review, "escalation"), nullptr);
}

TEST(ClientReview, an_emergency_leads_even_a_very_low) {
    Care care = with_a_night_low("empagliflozin");
    care.entry(DiaryKind::symptom, care_at(-1, 8), "vomiting");
    const FirstReview review = review_of(care);
    EXPECT_EQ(review.findings[0].code, "escalation");
    EXPECT_EQ(review.findings[0].question, "Emergency now");
    EXPECT_EQ(review.findings[1].code, "very_low");
}

TEST(ClientReview, a_high_finger_prick_leads_though_the_trace_does_not_show_it) {
    Care care;
    care.entry(DiaryKind::finger_prick, care_at(-3, 8)).glucose =
        Glucose{35'000, GlucoseUnit::mg_per_dl};
    const FirstReview review = review_of(care);
    EXPECT_EQ(review.findings[0].code, "escalation");
    EXPECT_THAT(review.findings[0].sentence, HasSubstr("Fri 13 February 08:00, 3 days ago"));
}

TEST(ClientReview, a_day_beyond_400_is_told_by_the_trace_and_not_twice) {
    Care care;
    Care::set(care.wears[0], 2000, 3, 420);
    const FirstReview review = review_of(care);
    EXPECT_EQ(review.findings[0].code, "very_high");
    EXPECT_THAT(review.findings[0].sentence, HasSubstr("One is not acknowledged yet."));
    EXPECT_EQ(finding_of(review, "escalation"), nullptr);
}

TEST(ClientReview, opens_with_why_they_came_and_ends_with_one_seen_asked_noted) {
    Care care;
    care.facts.why_they_came = "My mornings are high.";
    care.facts.agreed_change = {"a walk after dinner", care_day - std::chrono::days{12}, care_day};
    const FirstReview review = review_of(care);
    EXPECT_EQ(review.findings[0].code, "why_they_came");
    ASSERT_NE(finding_of(review, "agreed_change"), nullptr);
    EXPECT_THAT(finding_of(review, "agreed_change")->sentence, HasSubstr("the check is due"));
    EXPECT_THAT(review.one_thing_to_ask, HasSubstr("a walk after dinner"));
    EXPECT_FALSE(review.one_thing_seen.empty());
    EXPECT_FALSE(review.one_thing_to_note.empty());
}

TEST(ClientReview, asks_how_a_closed_change_went_no_more_but_says_that_it_is_closed) {
    Care care;
    care.facts.agreed_change = {"a walk after dinner", care_day - std::chrono::days{12}, care_day};
    care.facts.agreed_change->kind = Proposed::walking;
    EXPECT_THAT(review_of(care).one_thing_to_ask, HasSubstr("a walk after dinner"));
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    const FirstReview review = review_of(care);
    EXPECT_THAT(review.one_thing_to_ask, Not(HasSubstr("a walk after dinner")));
    ASSERT_NE(finding_of(review, "agreed_change"), nullptr);
    EXPECT_THAT(finding_of(review, "agreed_change")->sentence,
                AllOf(HasSubstr("does not go on"), Not(HasSubstr("the check is due"))));
}

TEST(ClientReview, a_medicine_changed_in_the_window_takes_the_credit_from_habits) {
    Care care;
    care.facts.medicines.push_back({"sitagliptin 100", care_day - std::chrono::days{5}, {}});
    const FirstReview review = review_of(care);
    const Finding* medicines = finding_of(review, "medicines");
    ASSERT_NE(medicines, nullptr);
    EXPECT_THAT(medicines->sentence, HasSubstr("sitagliptin started on Wed 11 February"));
    EXPECT_THAT(medicines->sentence, HasSubstr("can't be credited to a habit"));
}

TEST(ClientReview, an_unrecognised_medicine_is_asked_about) {
    Care care;
    care.takes("glicazide 80");
    const FirstReview review = review_of(care);
    const Finding* medicines = finding_of(review, "medicines");
    ASSERT_NE(medicines, nullptr);
    EXPECT_EQ(medicines->answer, Answer::cannot_tell);
    ASSERT_FALSE(medicines->caveats.empty());
    EXPECT_THAT(medicines->caveats[0].sentence, HasSubstr("Medicine not recognised: please ask."));
    EXPECT_EQ(review.one_thing_to_ask, "Which medicines are taken, and since when?");
}

TEST(ClientReview, cautions_rest_on_the_rules_of_the_gates) {
    Care care;
    care.facts.consent.given_on = care_day - std::chrono::days{50};
    EXPECT_EQ(finding_of(review_of(care), "care"), nullptr);
    care.facts.cautions.eating.positive = Answered::yes;
    care.entry(DiaryKind::symptom, care_at(-2), "thirsty");
    care.entry(DiaryKind::medicine, care_at(-2), "paracetamol 500");
    const FirstReview review = review_of(care);
    const Finding* found = finding_of(review, "care");
    ASSERT_NE(found, nullptr);
    EXPECT_THAT(found->sentence, HasSubstr("Ask the clinic whether the type has been checked."));
    EXPECT_THAT(found->sentence, HasSubstr("With paracetamol"));
    EXPECT_THAT(found->sentence, HasSubstr("Talk first."));
}

TEST(ClientReview, cautions_tell_that_consent_is_over) {
    Care care;
    care.facts.consent.given_on = care_day - std::chrono::days{50};
    care.facts.consent.withdrawn_on = care_day - std::chrono::days{2};
    const FirstReview review = review_of(care);
    ASSERT_NE(finding_of(review, "care"), nullptr);
    EXPECT_THAT(finding_of(review, "care")->sentence, HasSubstr("Consent was withdrawn on"));
}

TEST(ClientReview, no_text_bears_a_word_that_lulls_or_a_dose) {
    Care care = with_a_night_low("glicazide 80, insulin glargine");
    care.facts.cautions.eating = {};
    care.facts.agreed_change = {"a walk after dinner", {}, {}};
    Care::set(care.wears[0], 3000, 200, 290);
    const FirstReview review = review_of(care);
    std::string all = review.one_thing_seen + review.one_thing_to_ask + review.one_thing_to_note;
    for (const Finding& finding : review.findings) {
        all += finding.sentence + finding.client_sentence + finding.next.sentence;
        for (const Caveat& caveat : finding.caveats) {
            all += caveat.sentence;
        }
    }
    for (const char* word : {"no lows", " safe", " fine", "cured", " dose"}) {
        EXPECT_THAT(all, Not(HasSubstr(word)));
    }
}

}  // namespace
}  // namespace tracewright
