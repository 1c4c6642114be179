#include "coaching/handout.hpp"

#include "coaching/handout_words.hpp"
#include "coaching/numbers_in_text.hpp"
#include "coaching/reading_grade.hpp"
#include "paper_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using ::testing::AllOf;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Le;
using ::testing::Not;

std::string words_of(const Handout& made) {
    return all_words_of(made.paper);
}

std::string handout_words_of(const Care& care) {
    return words_of(handout(PaperCase(care).client()));
}

/// A handout with what else a variant may have; all parts change from case to case.
Care variant(std::size_t i) {
    const char* medicines[] = {"metformin 500", "gliclazide 80", "empagliflozin 10",
                               "insulin glargine", "an unknown one"};
    Care care = i % 3 == 1 ? with_a_very_low_night(medicines[i % 5]) : Care{};
    care.takes(medicines[i % 5]);
    if (i % 7 == 3) {
        care.facts.medicines_asked_on.reset();
    }
    if (i % 4 == 2) {
        Care::set(care.wears[0], 2000, 30, 420);
    }
    if (i % 6 == 5) {
        care.entry(DiaryKind::symptom, care_at(-1, 8), "vomiting");
    }
    const Answered screens[] = {Answered::no, Answered::yes, Answered::not_yet};
    care.facts.cautions.eating.positive = screens[(i / 2) % 3];
    const Pregnancy pregnancies[] = {Pregnancy::no, Pregnancy::no, Pregnancy::pregnant,
                                     Pregnancy::not_answered, Pregnancy::unsure};
    care.facts.cautions.pregnancy = pregnancies[(i / 3) % 5];
    if (i % 2 == 0) {
        care.facts.agreed_change = a_walk();
    }
    if (i % 5 == 4) {
        care.facts.contacts = {{ContactKind::clinic, "Clinic of an Invented Town", "0123 456 789"}};
    }
    care.as_of = care_at(i % 4 == 3 ? 40 : i % 4 == 1 ? 9 : 0, 12);
    if (i % 9 == 8) {
        care.wears.clear();
    }
    return care;
}

TEST(Handout, keeps_its_promises_in_every_variant) {
    for (std::size_t i = 0; i < 90; ++i) {
        const PaperCase made(variant(i));
        const Handout page = handout(made.client());
        const std::string words = words_of(page);
        SCOPED_TRACE(std::to_string(i) + "\n" + words);
        EXPECT_THAT(page.numbers, Le(most_numbers));
        EXPECT_THAT(page.grade, Le(6));
        EXPECT_THAT(forbidden_words_in(words), IsEmpty());
        for (const std::string& line : message_of(page.paper)) {
            EXPECT_FALSE(percent_or_decimal(line)) << line;
        }
        EXPECT_THAT(words, AllOf(HasSubstr(english_handout.good_thing),
                                 HasSubstr(english_handout.call_today),
                                 HasSubstr(english_handout.cautions)));
        EXPECT_THAT(words, AnyOf(HasSubstr("Your last reading was on"),
                                 HasSubstr(english_handout.no_reading)));
        const bool asked = !page.fewer_numbers;
        EXPECT_EQ(asked, made.care.facts.cautions.eating.positive == Answered::no);
    }
}

TEST(Handout, says_the_same_finding_as_the_coachs_page_and_no_other_number) {
    Care care;
    care.facts.agreed_change = a_walk();
    const PaperCase made(care);
    const Handout page = handout(made.client());
    const auto in_range = std::ranges::find(made.review.findings, "in_range", &Finding::code);
    ASSERT_FALSE(in_range->client_sentence.empty());
    EXPECT_THAT(words_of(page), HasSubstr(in_range->client_sentence));
    EXPECT_EQ(page.numbers, 1);
    EXPECT_EQ(page.picture, HandoutPicture::hours_bar);
    EXPECT_THAT(
        words_of(page),
        AllOf(HasSubstr("What: a short walk after dinner"), HasSubstr("When: right after dinner"),
              HasSubstr("Where: round the block"), HasSubstr("How often: each day"),
              HasSubstr("If it can't be done: walk up"), HasSubstr("How we check: the sensor"),
              HasSubstr("We look at it with you on Mon 23 February.")));
}

TEST(Handout, a_good_thing_is_never_few_hours_in_range) {
    Care care;
    care.wears.clear();
    care.wear(-14, 14, 230);
    EXPECT_THAT(handout_words_of(care), Not(HasSubstr("hours of the day were in range")));
}

TEST(Handout, its_own_number_goes_before_the_clients_and_too_many_are_told_to_the_coach) {
    Care care;
    care.facts.agreed_change = a_walk();
    care.facts.agreed_change->words = "walk 15 minutes, 3 times, and 2 flights of stairs";
    const Handout three = handout(PaperCase(care).client());
    EXPECT_EQ(three.numbers, 3);
    EXPECT_THAT(words_of(three), HasSubstr("you were in range for longer than"));
    care.facts.agreed_change->words += " and 20 squats";
    const Handout four = handout(PaperCase(care).client());
    EXPECT_EQ(four.numbers, 4);
    EXPECT_THAT(four.for_coach, Contains(HasSubstr("4 numbers, more than 3")));
}

TEST(Handout, a_very_low_stands_before_all_else_and_stays_after_it_was_answered) {
    PaperCase made(with_a_very_low_night("gliclazide 80"));
    const std::string open = words_of(handout(made.client()));
    EXPECT_THAT(open, HasSubstr("On Tue 10 February, at night, your glucose was very low. Ring "
                                "your clinic today."));
    EXPECT_LT(open.find("very low. Ring"), open.find(english_handout.good_thing));
    made.escalations.front().answer = "Wed 11 February 09:10, Fern: rang the client";
    EXPECT_THAT(words_of(handout(made.client())),
                HasSubstr("If it comes again, ring your clinic that same day."));
}

TEST(Handout, a_very_low_finger_prick_after_the_last_reading_stays_after_its_answer_too) {
    Care care;
    DiaryEntry prick;
    prick.kind = DiaryKind::finger_prick;
    prick.at = care_at(0, 8);
    prick.glucose = Glucose{5000, GlucoseUnit::mg_per_dl};
    care.diary.push_back(prick);
    PaperCase made(care);
    ASSERT_EQ(made.escalations.size(), 1U);
    made.escalations.front().answer = "Mon 16 February 09:10, Fern: rang the client";
    EXPECT_THAT(words_of(handout(made.client())),
                HasSubstr("If it comes again, ring your clinic that same day."));
}

TEST(Handout, carries_first_aid_and_driving_where_medicines_can_cause_lows_or_are_not_known) {
    constexpr const char* sugar = "Take 15 to 20 g of fast sugar, test again after 15 minutes";
    Care care;
    care.takes("gliclazide 80");
    EXPECT_THAT(handout_words_of(care),
                AllOf(HasSubstr(sugar), HasSubstr("ask your clinic about driving rules")));
    care.facts.medicines_asked_on.reset();
    care.takes("metformin 500");
    EXPECT_THAT(handout_words_of(care), HasSubstr(sugar));
    EXPECT_THAT(handout_words_of(Care{}), Not(HasSubstr(sugar)));
}

TEST(Handout, carries_the_sick_day_line_for_an_sglt2_inhibitor_or_an_open_list) {
    constexpr const char* line =
        "If you are ill, vomiting or can't eat, ring your clinic today, even when your glucose "
        "looks normal.";
    Care care;
    care.takes("empagliflozin 10");
    EXPECT_THAT(handout_words_of(care), HasSubstr(line));
    care.facts.medicines_asked_on.reset();
    EXPECT_THAT(handout_words_of(care), HasSubstr(line));
    EXPECT_THAT(handout_words_of(Care{}), Not(HasSubstr(line)));
}

TEST(Handout, with_the_eating_screen_positive_or_open_tells_no_hours_foods_amounts_or_weight) {
    for (const Answered answer : {Answered::yes, Answered::not_yet}) {
        Care care;
        care.facts.cautions.eating.positive = answer;
        care.meal(care_at(-2, 8), 60);
        care.facts.agreed_change = a_walk();
        care.facts.agreed_change->words = "smaller portions of rice";
        care.facts.agreed_change->kind = Proposed::food_change;
        const Handout page = handout(PaperCase(care).client());
        EXPECT_TRUE(page.fewer_numbers);
        EXPECT_EQ(page.picture, HandoutPicture::day_to_mark);
        EXPECT_EQ(page.numbers, 0);
        EXPECT_THAT(words_of(page), AllOf(Not(HasSubstr("in range")), Not(HasSubstr("rice")),
                                          Not(HasSubstr("weight")), Not(HasSubstr("carb")),
                                          HasSubstr(english_handout.talk_first)));
        EXPECT_THAT(page.for_coach, Contains(HasSubstr("referral")));
    }
}

TEST(Handout, numbers_come_back_for_a_reason_alone_and_the_coach_is_reminded_all_the_same) {
    Care care;
    care.facts.cautions.eating.positive = Answered::yes;
    const PaperCase made(care);
    const Handout page = handout(made.client(), {"the dietitian asked for it"});
    EXPECT_FALSE(page.fewer_numbers);
    EXPECT_EQ(page.picture, HandoutPicture::hours_bar);
    EXPECT_THAT(page.for_coach, Contains(HasSubstr("referral")));
    for (const char* nothing : {"", " ", "...", "\xC2\xA0"}) {
        EXPECT_TRUE(handout(made.client(), {nothing}).fewer_numbers) << nothing;
    }
}

TEST(Handout, tells_the_coach_that_consent_is_over_and_the_client_nothing_of_it) {
    Care care;
    care.facts.consent.given_on = care_day - std::chrono::days{50};
    EXPECT_THAT(handout(PaperCase(care).client(), {}).for_coach,
                Not(Contains(HasSubstr("onsent"))));
    care.facts.consent.until = care_day - std::chrono::days{1};
    EXPECT_THAT(handout(PaperCase(care).client(), {}).for_coach,
                Contains(HasSubstr("Consent ended on Sun 15 February: ask again.")));
    care.facts.consent.withdrawn_on = care_day - std::chrono::days{2};
    EXPECT_THAT(handout(PaperCase(care).client(), {}).for_coach,
                Contains(HasSubstr("Consent was withdrawn on Sat 14 February: keep and give out")));
    EXPECT_THAT(handout_words_of(care), Not(HasSubstr("onsent")));
}

TEST(Handout, in_pregnancy_sets_no_goal_and_no_plan_and_says_who_leads) {
    Care care;
    care.facts.cautions.pregnancy = Pregnancy::unsure;
    care.facts.agreed_change = a_walk();
    const std::string words = handout_words_of(care);
    EXPECT_THAT(words, AllOf(HasSubstr("Your maternity or diabetes clinic leads."),
                             Not(HasSubstr("walk")), Not(HasSubstr("hours of the day"))));
}

TEST(Handout, a_change_that_a_gate_closes_is_left_off_and_the_coach_is_told_why) {
    Care care;
    care.facts.agreed_change = a_walk();
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    const Handout page = handout(PaperCase(care).client());
    EXPECT_THAT(words_of(page),
                AllOf(HasSubstr(english_handout.change_waits), Not(HasSubstr("round the block"))));
    EXPECT_THAT(page.for_coach, Contains(HasSubstr("foot wound is on record")));
    care.facts.cautions.numb_feet_or_wound = Answered::no;
    care.facts.agreed_change->words = "take metformin with dinner";
    EXPECT_THAT(handout_words_of(care), Not(HasSubstr("metformin")));
}

TEST(Handout, without_a_clinics_number_prints_a_blank_line_and_tells_the_coach) {
    const Handout page = handout(PaperCase(Care{}).client());
    EXPECT_THAT(contacts_without_number(page.paper), ::testing::ElementsAre("Your clinic"));
    EXPECT_THAT(page.for_coach, Contains(HasSubstr("Please ask for it")));
}

TEST(Handout, where_the_type_is_to_be_checked_asks_the_client_to_see_the_clinic_soon) {
    Care care;
    care.facts.cautions.another_autoimmune_disease = Answered::yes;
    EXPECT_THAT(handout_words_of(care), HasSubstr("Please see your clinic soon."));
}

TEST(Handout, old_data_are_told_with_their_day_and_to_the_coach) {
    Care care;
    care.as_of = care_at(30, 12);
    const Handout page = handout(PaperCase(care).client());
    EXPECT_THAT(words_of(page), HasSubstr("Your last reading was on Sun 15 February, more than a "
                                          "week ago. We can't know what came after."));
    EXPECT_THAT(page.for_coach, Contains(HasSubstr("look at newer days")));
}

TEST(HandoutWords, every_sentence_reads_at_grade_six_or_lower_by_itself_within_reason) {
    const HandoutWords& words = english_handout;
    // A sentence alone may stand above the page's grade, but none far.
    for (const char* sentence : {words.last_reading,
                                 words.very_low,
                                 words.very_low_answered,
                                 words.very_high,
                                 words.can_be_an_emergency,
                                 words.same_day,
                                 words.this_week,
                                 words.best_day,
                                 words.wore,
                                 words.wrote,
                                 words.came,
                                 words.bar,
                                 words.mark_your_day,
                                 words.no_change,
                                 words.change_waits,
                                 words.talk_first,
                                 words.clinic_leads,
                                 words.call_now,
                                 words.call_now_ketones,
                                 words.call_today,
                                 words.local_first,
                                 words.cautions}) {
        const std::vector<std::string> texts{sentence};
        EXPECT_THAT(*reading_grade(counts_of(texts)), Le(9)) << sentence;
        EXPECT_THAT(forbidden_words_in(sentence), IsEmpty()) << sentence;
    }
}

}  // namespace
}  // namespace tracewright
