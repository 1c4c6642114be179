#include "coaching/eating_care.hpp"

#include "care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::HasSubstr;

std::vector<EatingSignSeen> signs_of(const Care& care) {
    return care.ask([](const CareInput& in) { return eating_signs(in); });
}

std::string told(const Care& care) {
    return care.ask([](const CareInput& in) { return eating_for_coach(in); });
}

// Safety rule 12.
TEST(EatingScreen, turns_numbers_down_unless_answered_no_by_someone_on_a_day) {
    const EatingScreen no{care_day, "Dr Larch", Answered::no};
    EXPECT_FALSE(numbers_turned_down(no));
    EXPECT_TRUE(numbers_turned_down({care_day, "Dr Larch", Answered::yes}));
    EXPECT_TRUE(numbers_turned_down({care_day, "Dr Larch", Answered::not_yet}));
    EXPECT_TRUE(numbers_turned_down({{}, "Dr Larch", Answered::no}));
    EXPECT_TRUE(numbers_turned_down({care_day, "", Answered::no}));
    EXPECT_TRUE(numbers_turned_down({care_day, " ", Answered::no}));
    EXPECT_TRUE(numbers_turned_down({}));
}

TEST(EatingSigns, single_meals_count_only_with_falling_weight) {
    Care care;
    care.meal(care_at(-3, 12), 60);
    care.meal(care_at(-2, 12), 60);
    EXPECT_TRUE(signs_of(care).empty());
    care.facts.labs = {{care_day - std::chrono::days{90}, "weight", 80, "kg"},
                       {care_day - std::chrono::days{1}, "weight", 76, "kg"}};
    ASSERT_EQ(signs_of(care).size(), 1U);
    EXPECT_EQ(signs_of(care)[0].sign, EatingSign::skipped_meals_and_falling_weight);
    care.meal(care_at(-2, 18), 60);
    EXPECT_TRUE(signs_of(care).empty());
}

TEST(EatingSigns, little_carbohydrate_is_one_unless_the_prescriber_agreed) {
    const auto with = [](double grams) {
        Care care;
        for (int day = -4; day < 0; ++day) {
            for (const int hour : {8, 13, 19}) {
                care.meal(care_at(day, hour), grams);
            }
        }
        return care;
    };
    EXPECT_TRUE(signs_of(with(50.0 / 3 + 0.01)).empty());
    Care care = with(16);
    ASSERT_EQ(signs_of(care).size(), 1U);
    EXPECT_EQ(signs_of(care)[0].sign, EatingSign::little_carbohydrate);
    care.facts.prescriber_answers = {
        {AskedAbout::low_carbohydrate, true, "Dr Larch", care_day - std::chrono::days{10}, {}}};
    EXPECT_TRUE(signs_of(care).empty());
}

TEST(EatingSigns, more_than_twenty_finger_pricks_on_a_day) {
    Care care;
    for (int i = 0; i < 20; ++i) {
        care.entry(DiaryKind::finger_prick, care_at(-1, i));
    }
    care.entry(DiaryKind::finger_prick, care_at(0, 1));
    EXPECT_TRUE(signs_of(care).empty());
    care.entry(DiaryKind::finger_prick, care_at(-1, 23));
    ASSERT_EQ(signs_of(care).size(), 1U);
    EXPECT_EQ(signs_of(care)[0].sign, EatingSign::many_finger_pricks);
}

TEST(EatingSigns, words_of_shame_are_raised_without_repeating_them) {
    Care care;
    care.entry(DiaryKind::meal, care_at(-1, 20),
               "cake. I was bad, don\xE2\x80\x99t deserve dinner");
    ASSERT_EQ(signs_of(care).size(), 1U);
    EXPECT_THAT(told(care), HasSubstr("words of shame in the diary of Sun 15 February 2026"));
    EXPECT_THAT(told(care), testing::Not(HasSubstr("deserve")));
}

TEST(EatingForCoach, says_talk_first) {
    EXPECT_EQ(told(Care{}), "");
    Care positive;
    positive.facts.cautions.eating.positive = Answered::yes;
    EXPECT_EQ(told(positive),
              "The eating screen was positive. Talk first. Don't set a food change. Offer a "
              "referral. The client's papers leave out photos, energy, carbohydrate, fasting, "
              "portions, weight, rankings and hours in range.");
    Care open;
    open.facts.cautions.eating = {};
    EXPECT_THAT(told(open), HasSubstr("is not answered"));
}

TEST(EatingQuestions, are_three_and_say_what_they_are_not) {
    const auto questions = eating_questions();
    ASSERT_EQ(questions.size(), 4U);
    EXPECT_THAT(questions[0], HasSubstr("not a validated screen"));
}

}  // namespace
}  // namespace tracewright
