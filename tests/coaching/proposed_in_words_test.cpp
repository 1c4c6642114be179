// What a change's own words would have the client do. Ours, no source.
#include "coaching/proposed_in_words.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tracewright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

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

TEST(ProposedInWords, is_nothing_in_plain_changes) {
    for (const char* words :
         {"breakfast by 8:00", "dinner before 19:30 on four days a week", "no dinner after 19:30",
          "vegetables first", "the same breakfast, half the bread", "bed by 22:30",
          "lose track of nothing", "a missing spoon", "breakfast at the table"}) {
        EXPECT_THAT(proposed_in(words), IsEmpty()) << words;
        EXPECT_FALSE(speaks_of_taking(words)) << words;
    }
}

TEST(ProposedInWords, of_a_dose_or_a_supplement_are_met_without_a_medicines_name) {
    for (const char* words : {"inject 2 units less", "half a pill at night", "take berberine",
                              "500 mg twice a day", "One tablet fewer", "an extra shot"}) {
        EXPECT_TRUE(speaks_of_taking(words)) << words;
    }
    EXPECT_FALSE(speaks_of_taking("walk when above 180 mg/dL"));
    EXPECT_FALSE(speaks_of_taking("a unique, united effort"));
}

}  // namespace
}  // namespace tracewright
