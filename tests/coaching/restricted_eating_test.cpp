#include "coaching/restricted_eating.hpp"

#include "care_for_tests.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::HasSubstr;

// Meals at 08:00, 13:00 and 19:30 of `days` days, `grams` each.
void three_meals(Care& care, int from, int days, double grams) {
    for (int day = from; day < from + days; ++day) {
        care.meal(care_at(day, 8), grams);
        care.meal(care_at(day, 13), grams);
        care.meal(care_at(day, 19, 30), grams);
    }
}

RestrictedEating seen(const Care& care) {
    return care.ask([](const CareInput& in) { return restricted_eating(in); });
}

std::string told(const Care& care) {
    return care.ask([](const CareInput& in) { return restricted_eating_for_coach(in); });
}

// 130 g a day: safety rule 8, our own rule.
TEST(LittleCarbohydrate, is_the_lowest_mean_of_three_days_running_below_130_g) {
    Care at_edge;
    three_meals(at_edge, -6, 6, 130.0 / 3);
    EXPECT_FALSE(seen(at_edge).little_carbohydrate);
    Care below;
    three_meals(below, -9, 3, 60);
    three_meals(below, -6, 3, 40);
    three_meals(below, -3, 3, 60);
    ASSERT_TRUE(seen(below).little_carbohydrate);
    EXPECT_EQ(seen(below).little_carbohydrate->from, care_day - std::chrono::days{6});
    EXPECT_NEAR(seen(below).little_carbohydrate->grams_a_day, 120, 1e-9);
}

TEST(LittleCarbohydrate, is_not_read_from_a_poor_diary) {
    Care two_meals;
    for (int day = -6; day < 0; ++day) {
        two_meals.meal(care_at(day, 8), 20);
        two_meals.meal(care_at(day, 18), 20);
    }
    EXPECT_FALSE(seen(two_meals).little_carbohydrate);
    Care without_grams;
    three_meals(without_grams, -6, 6, 30);
    without_grams.diary[4].carbohydrate_g.reset();
    without_grams.diary[13].carbohydrate_g.reset();
    EXPECT_FALSE(seen(without_grams).little_carbohydrate);
    Care two_days;
    three_meals(two_days, -2, 2, 30);
    EXPECT_FALSE(seen(two_days).little_carbohydrate);
    EXPECT_FALSE(seen(Care{}).little_carbohydrate);
}

// 12 h: safety rule 8.
TEST(LongGap, is_more_than_twelve_hours_between_two_meals_of_neighbouring_days) {
    Care at_edge;
    at_edge.meal(care_at(-2, 20), 50);
    at_edge.meal(care_at(-1, 8), 50);
    EXPECT_FALSE(seen(at_edge).long_gap);
    three_meals(at_edge, 0, 0, 0);
    at_edge.meal(care_at(-1, 20, 30), 50);
    ASSERT_TRUE(seen(at_edge).long_gap);
    EXPECT_EQ(seen(at_edge).long_gap->gap.from, care_at(-1, 8));
    EXPECT_EQ(seen(at_edge).long_gap->count, 1);
    Care unwritten;
    unwritten.meal(care_at(-5, 20), 50);
    unwritten.meal(care_at(-2, 8), 50);
    EXPECT_FALSE(seen(unwritten).long_gap);
}

// A fast is told of by what else was written, or by its own words; a blank day tells nothing.
TEST(LongGap, of_a_day_on_which_other_things_were_written_is_told) {
    const auto hours = [](auto&& write, bool ends = true) {
        Care care;
        care.meal(care_at(-4, 20), 50);
        write(care);
        if (ends) {
            care.meal(care_at(-2, 7), 50);
        }
        const auto gap = seen(care).long_gap;
        return gap ? (gap->gap.to - gap->gap.from) / std::chrono::hours{1} : 0;
    };
    const auto write = [](DiaryKind kind, int day, int hour, const char* text) {
        return [=](Care& care) { care.entry(kind, care_at(day, hour), text); };
    };
    EXPECT_EQ(hours([](Care&) {}), 0);
    EXPECT_EQ(hours(write(DiaryKind::movement, -3, 10, "walk")), 35);
    EXPECT_EQ(hours(write(DiaryKind::note, -3, 10, "water fast today")), 35);
    EXPECT_EQ(hours(write(DiaryKind::meal, -3, 10, "water fast")), 35);
    EXPECT_EQ(hours(write(DiaryKind::finger_prick, -3, 10, "5.6")), 0);
    // No meal has ended it: as far as the diary tells.
    EXPECT_EQ(hours(write(DiaryKind::note, -3, 10, "fasting"), false), 28);
    EXPECT_EQ(hours(write(DiaryKind::note, -3, 10, "fasting glucose 5.6"), false), 28);
    EXPECT_EQ(hours(write(DiaryKind::note, -4, 21, "slept early"), false), 0);
    EXPECT_EQ(hours(write(DiaryKind::note, -4, 7, "fasting"), false), 0);  // before the meal
}

TEST(LongGap, that_goes_on_is_told_by_its_words) {
    Care care;
    care.meal(care_at(-1, 20), 50);
    care.entry(DiaryKind::note, care_at(0, 11), "still fasting");
    ASSERT_TRUE(seen(care).long_gap);
    EXPECT_EQ(seen(care).long_gap->gap.to, care_at(0, 11));
    care.diary.back().text = "fasting glucose 5.6";
    EXPECT_FALSE(seen(care).long_gap);
}

TEST(LongGap, of_weeks_without_a_meal_is_a_diary_without_meals) {
    Care care;
    care.meal(care_at(-12, 20), 50);
    for (int day = -11; day < -1; ++day) {
        care.entry(DiaryKind::movement, care_at(day, 10), "walk");
    }
    EXPECT_FALSE(seen(care).long_gap);
}

TEST(RestrictedEating, of_a_fast_of_a_day_asks_whether_nothing_was_eaten) {
    Care care;
    care.takes("dapagliflozin 10");
    care.meal(care_at(-4, 20), 50);
    care.entry(DiaryKind::movement, care_at(-3, 10), "walk");
    care.meal(care_at(-2, 7), 50);
    EXPECT_THAT(told(care), HasSubstr("35 h without food from"));
    EXPECT_THAT(told(care), HasSubstr("was nothing eaten? This is beside an SGLT2 inhibitor."));
}

TEST(RestrictedEating, is_judged_by_the_medicines_of_its_own_days) {
    Care care;
    three_meals(care, -9, 6, 30);
    care.facts.medicines.push_back({"dapagliflozin 10", care_day - std::chrono::days{2}, {}});
    EXPECT_EQ(told(care), "");  // it began after
    care.facts.medicines.back().from = care_day - std::chrono::days{4};
    EXPECT_THAT(told(care), HasSubstr("90 g of carbohydrate a day"));
    EXPECT_THAT(told(care), HasSubstr("12 h 30 min without food from Wed 11 Feb"));
    EXPECT_THAT(told(care), testing::Not(HasSubstr("gaps over 12 h")));
}

TEST(RestrictedEating, is_told_for_an_sglt2_inhibitor_until_the_prescriber_answers) {
    Care care;
    three_meals(care, -6, 6, 30);
    EXPECT_EQ(told(care), "");  // metformin alone
    care.takes("dapagliflozin 10");
    EXPECT_THAT(told(care), HasSubstr("90 g of carbohydrate a day over three days"));
    EXPECT_THAT(told(care), HasSubstr("12 h 30 min without food"));
    EXPECT_THAT(told(care), HasSubstr("one of 5 gaps"));
    EXPECT_THAT(told(care), HasSubstr("beside an SGLT2 inhibitor"));
    EXPECT_THAT(told(care), HasSubstr("even when glucose looks normal"));
    const CivilDate on = care_day - std::chrono::days{3};
    care.facts.prescriber_answers = {{AskedAbout::low_carbohydrate, true, "Dr Larch", on, {}}};
    EXPECT_THAT(told(care), testing::Not(HasSubstr("90 g")));
    EXPECT_THAT(told(care), HasSubstr("without food"));
    care.facts.prescriber_answers.push_back({AskedAbout::fasting, true, "Dr Larch", on, {}});
    EXPECT_EQ(told(care), "");
    care.facts.medicines.push_back({"sitagliptin", care_day - std::chrono::days{1}, {}});
    EXPECT_THAT(told(care), HasSubstr("90 g"));  // the answers lapsed
}

TEST(RestrictedEating, is_told_while_the_list_is_open_or_the_type_is) {
    Care open;
    three_meals(open, -6, 6, 30);
    open.facts.medicines_asked_on.reset();
    EXPECT_THAT(told(open), HasSubstr("counts as holding an SGLT2 inhibitor"));
    Care type;
    three_meals(type, -6, 6, 30);
    type.facts.told_type = "not sure";
    EXPECT_THAT(told(type), HasSubstr("whether the type has been checked"));
}

// Safety rule 12: what was seen is told, without its grams.
TEST(RestrictedEating, is_told_without_grams_where_the_eating_screen_is_positive_or_open) {
    Care care;
    three_meals(care, -6, 6, 30);
    care.takes("empagliflozin 10");
    EXPECT_THAT(told(care), HasSubstr("90 g of carbohydrate"));
    care.facts.cautions.eating.positive = Answered::yes;
    EXPECT_THAT(told(care), HasSubstr("The diary has little carbohydrate over three days"));
    EXPECT_THAT(told(care), testing::Not(HasSubstr(" g of")));
}

TEST(SickDayLine, stands_for_everyone_who_may_take_an_sglt2_inhibitor) {
    const auto line = [](const Care& care) {
        return care.ask([](const CareInput& in) { return sick_day_line(in); });
    };
    Care care;
    EXPECT_EQ(line(care), "");
    care.takes("empaglifozin 25");  // misspelt
    EXPECT_THAT(line(care), HasSubstr("ring your clinic today"));
}

}  // namespace
}  // namespace tracewright
