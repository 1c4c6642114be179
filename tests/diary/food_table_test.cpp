#include "diary/food_table.hpp"

#include "measures/check_table.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;

// Source of the values: USDA National Nutrient Database for Standard Reference, Release 26 (2013).
TEST(FoodTable, ships_206_foods_and_energy_agrees_with_what_gives_it) {
    ASSERT_EQ(shipped_foods().size(), 206U);
    int off = 0;
    for (const FoodFacts& food : shipped_foods()) {
        EXPECT_GT(food.portion_g, 0) << food.name;
        EXPECT_FALSE(food.source.empty());
        if (food.energy_kcal && food.carbohydrate_g && food.protein_g && food.fat_g) {
            // Atwater's factors, 4, 4 and 9 kcal a gram (common practice).
            const double sum = 4 * *food.carbohydrate_g + 4 * *food.protein_g + 9 * *food.fat_g;
            off += std::abs(sum - *food.energy_kcal) > 0.2 * *food.energy_kcal + 8 ? 1 : 0;
        }
    }
    EXPECT_LE(off, 10);  // drinks with alcohol, bran
}

TEST(FoodTable, an_empty_cell_is_not_measured_and_not_zero) {
    const auto found = foods_called("white rice short-grain boiled", shipped_foods());
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found[0].food->name, "white rice, short-grain, boiled");
    EXPECT_FALSE(found[0].food->fibre_g);
    EXPECT_FALSE(found[0].food->available_carbohydrate_g());
}

// White rice, long-grain, boiled, NDB 20045: 28.17 g carbohydrate and 0.4 g fibre in 100 g.
TEST(FoodTable, a_portion_is_worked_out_and_available_is_total_less_fibre) {
    const auto found = foods_called("white rice long-grain", shipped_foods());
    ASSERT_FALSE(found.empty());
    const FoodPortion cup = portion_of(*found[0].food, found[0].food->portion_g);
    EXPECT_EQ(cup.grams, 158);
    EXPECT_NEAR(*cup.carbohydrate_g, 44.5086, 1e-9);
    EXPECT_NEAR(*cup.available_carbohydrate_g, (28.17 - 0.4) * 1.58, 1e-9);
    EXPECT_NEAR(*cup.energy_kcal, 205.4, 1e-9);
}

TEST(FoodTable, a_table_without_fibre_in_its_carbohydrate_is_not_taken_down_again) {
    const auto own = foods_in(
        "food,portion,portion_g,e,c,f,p,fat,gi,gs,source\nrye,slice,40,220,42,8,7,1,,,mine\n",
        CarbohydrateBasis::available);
    ASSERT_EQ(own.size(), 1U);
    EXPECT_EQ(own[0].available_carbohydrate_g(), 42);
}

TEST(FoodTable, finds_by_words_in_any_order_and_nothing_for_nothing) {
    EXPECT_FALSE(foods_called("boiled rice white", shipped_foods()).empty());
    EXPECT_TRUE(foods_called("", shipped_foods()).empty());
    EXPECT_TRUE(foods_called("zzzz", shipped_foods()).empty());
    const auto found = foods_called("potatoes", shipped_foods());
    ASSERT_FALSE(found.empty());
    EXPECT_NE(found[0].food->name.find("potato"), std::string::npos);
}

// gi-class, gi-class-alt, gl-1, gi-mixed, gi-ratio of the check table; sources stand in the rows.
TEST(FoodTable, index_and_load_meet_the_check_table) {
    int met = 0;
    for (const CheckRow& row :
         check_rows(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/tests/data/glycaemia-checks.csv")) {
        if (row.id.starts_with("gi-class")) {
            ++met;
            const auto expected = row.expected_texts();
            const auto inputs = row.list("gi");
            for (std::size_t i = 0; i < inputs.size(); ++i) {
                EXPECT_EQ(index_class(inputs[i], row.id == "gi-class-alt"), expected[i]) << row.id;
            }
        } else if (row.id == "gl-1") {
            ++met;
            EXPECT_NEAR(glycaemic_load(row.number("gi"), row.number("carb_g")),
                        std::stod(row.expected), row.within());
        } else if (row.id == "gi-mixed") {
            ++met;
            EXPECT_NEAR(meal_index(row.list("gi"), row.list("carb_g")), std::stod(row.expected),
                        row.within());
        } else if (row.id == "gi-ratio") {
            ++met;
            EXPECT_NEAR(index_from_areas(row.number("test_iauc"), row.list("reference_iaucs")),
                        std::stod(row.expected), row.within());
        }
    }
    EXPECT_EQ(met, 5);
}
