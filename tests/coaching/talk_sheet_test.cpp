#include "coaching/talk_sheet.hpp"

#include "paper_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;

TEST(TalkSheet, asks_three_questions_made_from_the_leading_findings_in_their_order) {
    Care care = with_a_very_low_night("gliclazide 80");
    care.facts.agreed_change = a_walk();
    const PaperCase made(care);
    const auto questions = talk_questions(made.client());
    ASSERT_THAT(questions, SizeIs(3));
    EXPECT_THAT(questions[0].question, HasSubstr("Tell me about Tue 10 February 02:40"));
    EXPECT_THAT(questions[0].behind, HasSubstr("below 3.0 mmol/L"));
    for (const TalkQuestion& one : questions) {
        EXPECT_THAT(one.question, HasSubstr("?"));
    }
}

TEST(TalkSheet, fills_up_with_questions_that_open_any_talk) {
    Care care;
    care.wears.clear();
    const auto questions = talk_questions(PaperCase(care).client());
    ASSERT_THAT(questions, SizeIs(3));
    EXPECT_THAT(questions[2].behind, IsEmpty());
}

TEST(TalkSheet, has_room_for_their_words_and_both_scales_and_asks_after_a_lapse) {
    const std::string words = all_words_of(talk_sheet(PaperCase(Care{}).client()));
    EXPECT_THAT(
        words,
        AllOf(HasSubstr("Their own explanation, in their words"), HasSubstr("In their words:"),
              HasSubstr("How much does it matter"), HasSubstr("How sure are you"),
              HasSubstr("Below 7: make the change smaller"), HasSubstr("What made it hard?")));
    EXPECT_LT(words.find("Ask before showing anything"), words.find("Then show one thing"));
    EXPECT_THAT(forbidden_words_in(words), IsEmpty());
}

TEST(TalkSheet, tells_what_must_be_done_before_the_talk) {
    const std::string words =
        all_words_of(talk_sheet(PaperCase(with_a_very_low_night("gliclazide 80")).client()));
    EXPECT_THAT(words, HasSubstr("Same day, client and prescriber: Tue 10 February 02:40"));
    EXPECT_LT(words.find("Before the talk"), words.find("Ask before showing anything"));
}

TEST(TalkSheet, counts_what_is_open_beyond_what_it_lists) {
    PaperCase made(with_a_very_low_night("gliclazide 80"));
    const StandingEscalation one = made.escalations.front();
    made.escalations.assign(6, one);
    EXPECT_THAT(all_words_of(talk_sheet(made.client())), Not(HasSubstr("more, not acknowledged")));
    made.escalations.assign(9, one);
    EXPECT_THAT(all_words_of(talk_sheet(made.client())),
                HasSubstr("And 3 more, not acknowledged either."));
}

TEST(TalkSheet, asks_how_a_change_went_only_while_it_goes_on) {
    Care care;
    care.facts.agreed_change = a_walk();
    EXPECT_THAT(all_words_of(talk_sheet(PaperCase(care).client())),
                AllOf(HasSubstr("How did it go with \"a short walk after dinner\""),
                      HasSubstr("Kept, or what instead?"), Not(HasSubstr("does not go on"))));
    care.facts.cautions.numb_feet_or_wound = Answered::yes;
    EXPECT_THAT(all_words_of(talk_sheet(PaperCase(care).client())),
                AllOf(HasSubstr("\"a short walk after dinner\". It does not go on"),
                      Not(HasSubstr("How did it go with")), Not(HasSubstr("Kept, or"))));
}

TEST(TalkSheet, in_pregnancy_has_no_plan_and_with_an_open_screen_shows_no_numbers) {
    Care care;
    care.facts.cautions.pregnancy = Pregnancy::pregnant;
    care.facts.cautions.eating.positive = Answered::not_yet;
    const std::string words = all_words_of(talk_sheet(PaperCase(care).client()));
    EXPECT_THAT(words, AllOf(HasSubstr("maternity or diabetes clinic leads"),
                             Not(HasSubstr("How sure are you")),
                             HasSubstr("Show the client no hours in range")));
}

}  // namespace
}  // namespace tracewright
