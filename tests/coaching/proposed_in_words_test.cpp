// What a change's own words would have the client do. Ours, no source.
#include "coaching/proposed_in_words.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

TEST(ProposedInWords, is_met_whatever_it_was_filed_under) {
    EXPECT_THAT(proposed_in("Skip breakfast"), ElementsAre(Proposed::meal_skipping));
    EXPECT_THAT(proposed_in("leave out my dinner twice a week"),
                ElementsAre(Proposed::meal_skipping));
    EXPECT_THAT(proposed_in("no lunch on Mondays"), ElementsAre(Proposed::meal_skipping));
    EXPECT_THAT(proposed_in("fast until noon"), ElementsAre(Proposed::fasting));
    EXPECT_THAT(proposed_in("try 16:8"), ElementsAre(Proposed::fasting));
    EXPECT_THAT(proposed_in("low-carb at dinner"), ElementsAre(Proposed::low_carbohydrate));
    EXPECT_THAT(proposed_in("keto for a week"), ElementsAre(Proposed::low_carbohydrate));
    EXPECT_THAT(proposed_in("lose 5 kg"), ElementsAre(Proposed::weight_loss));
    EXPECT_THAT(proposed_in("a diet of 1200 kcal"), ElementsAre(Proposed::weight_loss));
    EXPECT_THAT(proposed_in("walk the dog, then skip dinner"),
                ElementsAre(Proposed::meal_skipping, Proposed::walking));
}

TEST(ProposedInWords, of_little_carbohydrate_are_met_by_grams_and_by_staples_left_out) {
    for (const char* words :
         {"Eat under 50 g of carbohydrate a day", "20 g carbs per day", "20g carbs",
          "No bread, rice, pasta or potatoes", "Leave bread, rice and potatoes off the plate",
          "Only meat and salad all day", "Cut back on starch", "carbohydrate-free dinner",
          "carnivore", "Atkins", "Avoid potatoes", "Don't eat bread"}) {
        EXPECT_THAT(proposed_in(words), Contains(Proposed::low_carbohydrate)) << words;
    }
}

TEST(ProposedInWords, of_fasting_are_met_by_the_clock_and_by_what_alone_is_taken) {
    for (const char* words :
         {"Only water until noon", "Dinner at 17:00, then nothing until noon",
          "Dinner at 17:00, breakfast at 9:30", "intermittent fast",
          "Just black coffee in the morning", "Breakfast pushed to 13:00", "Breakfast at 11:30",
          "Eat only between 12:00 and 18:00", "Soup days: only broth on Mondays", "OMAD", "Ramadan",
          "No food after 18:00 until 12:00", "Not eating in the morning", "eat nothing",
          "Last bite by 15:00, first bite at 11:00", "Water and tea for lunch"}) {
        EXPECT_THAT(proposed_in(words), Contains(Proposed::fasting)) << words;
    }
    EXPECT_THAT(proposed_in("dinner at 19:30, breakfast at 7:00"), IsEmpty());
    // Two parts of a change are not one night.
    EXPECT_THAT(proposed_in("a snack at 18:00; lunch at 10:00"), Not(Contains(Proposed::fasting)));
}

TEST(ProposedInWords, of_a_meal_left_out_are_met_by_other_words_too) {
    for (const char* words :
         {"Don't eat breakfast", "do not eat lunch", "replace dinner with a shake",
          "Only one meal on weekdays", "go without supper", "Skipping my lunch"}) {
        EXPECT_THAT(proposed_in(words), Contains(Proposed::meal_skipping)) << words;
    }
}

TEST(ProposedInWords, of_weight_are_met) {
    for (const char* words : {"Shed weight", "Get down to 80 kg", "Drop 5kg", "800-calorie shakes",
                              "Weigh myself daily and get to 80 kg"}) {
        EXPECT_THAT(proposed_in(words), Contains(Proposed::weight_loss)) << words;
    }
    EXPECT_THAT(proposed_in("Weigh yourself every morning"), ElementsAre(Proposed::food_change));
    EXPECT_THAT(proposed_in("weigh all food"), ElementsAre(Proposed::food_change));
}

TEST(ProposedInWords, of_moving_are_met) {
    for (const char* words :
         {"Treadmill 20 minutes after dinner", "Take the steps", "march on the spot",
          "Push-ups before bed", "climb the hill", "brisk stroll", "Skipping rope",
          "10 minutes of movement after dinner", "get off the bus one stop early", "football",
          "yoga"}) {
        EXPECT_THAT(proposed_in(words), Contains(Proposed::walking)) << words;
    }
}

TEST(ProposedInWords, that_limit_food_are_met_but_meals_as_times_are_not) {
    for (const char* words : {"Half portions at each meal", "Eat half of what you eat now",
                              "No sweets", "Eat less at dinner", "no second helping",
                              "the same breakfast, half the bread", "smaller plates"}) {
        EXPECT_TRUE(limits_eating(words)) << words;
    }
    for (const char* words : {"no phone after dinner", "television off after the dinner",
                              "in bed by 22:30", "lights out by 23:00", "vegetables first",
                              "a banana at breakfast", "bread first; if not, the next day"}) {
        EXPECT_FALSE(limits_eating(words)) << words;
    }
}

TEST(ProposedInWords, is_nothing_in_plain_changes) {
    for (const char* words :
         {"breakfast by 8:00", "dinner before 19:30 on four days a week", "no dinner after 19:30",
          "vegetables first", "the same breakfast, half the bread", "bed by 22:30",
          "three days in a row, until 16 March", "15 g of fast sugar", "salad with vinegar",
          "a banana and cereal", "at 14:10", "whole bread at breakfast; if not, the next day",
          "two hours after the first bite", "a glass of water at dinner", "in the garden",
          "lose track of nothing", "a missing spoon", "breakfast at the table"}) {
        EXPECT_THAT(proposed_in(words), IsEmpty()) << words;
        EXPECT_FALSE(speaks_of_taking(words)) << words;
    }
}

TEST(ProposedInWords, of_a_dose_or_a_supplement_are_met_without_a_medicines_name) {
    for (const char* words :
         {"inject 2 units less", "half a pill at night", "take berberine", "500 mg twice a day",
          "One tablet fewer", "an extra shot", "500mg twice a day", "Take your meds later",
          "halve the evening one", "Skip the evening one", "two instead of four in the evening",
          "apple cider vinegar before meals", "psyllium"}) {
        EXPECT_TRUE(speaks_of_taking(words)) << words;
    }
    EXPECT_FALSE(speaks_of_taking("walk when above 180 mg/dL"));
    EXPECT_FALSE(speaks_of_taking("a unique, united effort"));
}

TEST(ProposedInWords, of_a_medicine_misspelt_by_a_letter_or_two_are_met) {
    for (const char* words : {"Metphormin only once", "gliclazid later", "less insuline",
                              "empagliflosin on Mondays", "half the glargin"}) {
        EXPECT_TRUE(nearly_names_a_medicine(words)) << words;
    }
    for (const char* words :
         {"walk to the station and back after dinner", "vegetables and protein first at lunch",
          "a longer night, lights out by half past ten", "porridge in place of toast",
          "round the park with the neighbour and her dog", "the stairs instead of the lift",
          "five evenings a week, the next day otherwise", "hours in range of the next wear",
          "your feet or chest hurt, you feel unwell or shaky outside"}) {
        EXPECT_FALSE(nearly_names_a_medicine(words)) << words;
    }
}

}  // namespace
}  // namespace tracewright
