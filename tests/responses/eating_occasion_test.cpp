#include "responses/eating_occasion.hpp"

#include "responses/days_for_tests.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

namespace {
const ZoneHistory zones{Zone::floating()};
}

TEST(EatingOccasion, entries_under_thirty_minutes_apart_are_one) {
    const Diary diary = {meal(moment(0, 12), "rice", 40), meal(moment(0, 12, 29), "yoghurt", 12),
                         meal(moment(0, 12, 59), "tea with sugar", 8)};
    const auto found = eating_occasions(diary, zones);
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0].text(), "rice, yoghurt");
    EXPECT_EQ(found[0].carbohydrate_g, 52);
    EXPECT_EQ(found[0].last, moment(0, 12, 29));
    EXPECT_EQ(found[1].text(), "tea with sugar");
}

TEST(EatingOccasion, carbohydrate_is_unknown_if_a_part_of_it_is) {
    const Diary diary = {meal(moment(0, 12), "rice", 40),
                         entry(DiaryKind::meal, moment(0, 12, 10), "sauce")};
    EXPECT_FALSE(eating_occasions(diary, zones)[0].carbohydrate_g);
}

TEST(EatingOccasion, total_and_available_carbohydrate_are_never_added_up) {
    Diary diary = {meal(moment(0, 12), "rice", 40), meal(moment(0, 12, 10), "bread", 20)};
    diary[0].carbohydrate_basis = CarbohydrateBasis::total;
    diary[1].carbohydrate_basis = CarbohydrateBasis::available;
    EXPECT_FALSE(eating_occasions(diary, zones)[0].carbohydrate_g);
}

TEST(EatingOccasion, slots_by_the_clock_and_as_written) {
    struct Row {
        int hour, minute;
        MealSlot slot;
    };
    const Row rows[] = {{3, 59, MealSlot::snack},      {4, 0, MealSlot::breakfast},
                        {10, 29, MealSlot::breakfast}, {10, 30, MealSlot::snack},
                        {11, 30, MealSlot::lunch},     {14, 30, MealSlot::snack},
                        {17, 30, MealSlot::dinner},    {22, 30, MealSlot::snack}};
    for (const Row& row : rows) {
        EXPECT_EQ(slot_of(WallTime{moment(0, row.hour, row.minute).time_since_epoch()}), row.slot)
            << row.hour << ":" << row.minute;
    }
    Diary diary = {meal(moment(0, 15), "pasta", 60)};
    diary[0].slot = "Late Lunch";
    EXPECT_EQ(eating_occasions(diary, zones)[0].slot, MealSlot::lunch);
}

TEST(EatingOccasion, a_food_is_known_again_without_its_amount) {
    EXPECT_EQ(food_key("Rice 150 g"), "rice");
    EXPECT_EQ(food_key("2 slices  Rye Bread, "), "rye bread");
    EXPECT_EQ(food_key("150g rice"), "rice");
    EXPECT_EQ(food_key("two slices of rye bread, cheese"), "rye bread, cheese");
    EXPECT_EQ(food_key("soup, a slice of bread"), "soup, bread");
    EXPECT_EQ(food_key("a piece of cake"), "a piece of cake");
    EXPECT_EQ(food_key("bowl of soup 300 ml"), "bowl of soup");
    EXPECT_EQ(food_key("apple | pomme 125g"), "apple");
    EXPECT_EQ(food_key(""), "");
}

TEST(EatingOccasion, other_entries_are_none) {
    EXPECT_TRUE(
        eating_occasions({entry(DiaryKind::alcohol, moment(0, 20), "wine")}, zones).empty());
    EXPECT_TRUE(eating_occasions({}, zones).empty());
}
