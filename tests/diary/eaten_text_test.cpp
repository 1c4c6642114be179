#include "diary/eaten_text.hpp"

#include "diary/food_spelling.hpp"
#include "diary/food_words.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

using namespace tracewright;

namespace {

// Foods found, in short: "white bread 56, cheddar cheese 28"; '!' behind what is not sure, '-'
// before what was not eaten, '?' for what was not found.
std::string in_short(const EatenText& eaten) {
    std::string line;
    for (const EatenFood& food : eaten.foods) {
        line += line.empty() ? "" : ", ";
        const bool found = !food.candidates.empty() && food.confidence > 0;
        if (food.denied) {
            line += "-" + food.written;
        } else if (!found) {
            line += "?" + food.written;
        } else {
            line += food.candidates[0].food.name.substr(0, food.candidates[0].food.name.find(',')) +
                    " " + std::to_string(std::lround(food.portion.grams)) +
                    (food.sure() ? "" : "!") + (food.alternative ? "~" : "");
        }
    }
    return line;
}

}  // namespace

// Ours, no source: how people write. The grams follow from the portions of the shipped table (USDA
// SR26, 2013) and from the measures of diary/household_measure.cpp.
TEST(EatenText, reads_how_people_write) {
    const struct {
        const char* text;
        const char* read;
    } rows[] = {
        {"porridge and banana", "oat porridge made with water 234!, banana 118"},
        {"2 slices of bread with cheese", "white bread 56!, cheddar cheese 28!"},
        {"porrige and bananna", "oat porridge made with water 234!, banana 118"},
        {"strawbery", "strawberries 144"},
        {"200ml orange juice", "orange juice 210"},
        {"0,2 l orange juice", "orange juice 210"},
        {"a cup of rice, no sauce", "white rice 158!, -sauce"},
        {"rice w/ chicken", "white rice 158!, chicken breast 86!"},
        {"3 eggs + 2 toast", "egg 150!, white bread 56!"},
        {"half a banana", "banana 59"},
        {"\xC2\xBD banana", "banana 59"},
        {"1/2 cup lentils", "lentils 99"},
        {"1 1/2 cups lentils", "lentils 297"},
        {"one and a half cups of lentils", "lentils 297"},
        {"2-3 plums", "plum 165"},
        {"Bowl of CORN FLAKES with milk", "corn flakes 36, cow's milk 244!"},
        {"handful of almonds", "almonds 30"},
        {"10 almonds", "almonds 12"},
        {"5 crackers", "saltine crackers 15!"},
        {"chicken soup", "?chicken soup"},
        {"tuna sandwich", "?tuna sandwich"},
        {"rice or potatoes", "white rice 158!, potato 167!~"},
        {"no rice and beans", "-rice, red kidney beans 177!"},
        {"no rice or beans", "-rice, -beans"},
        {"no rice, beans", "-rice, red kidney beans 177!"},
        {"instead of rice: cauliflower", "-rice: cauliflower"},
        {"coffee without sugar", "coffee 237!, -sugar"},
        {"coffee w/o sugar", "coffee 237!, -sugar"},
        {"not much rice", "white rice 158!"},
        {"macaroni and cheese", "macaroni cheese 244!"},
        {"peanut butter on toast", "peanut butter 32, white bread 28!"},
        {"white rice 150 g", "white rice 150"},
        {"150g white rice", "white rice 150"},
        {"banana (120 g)", "banana 120"},
        {"banana, 120 g", "banana 120"},
        {"2 large slices of wholemeal bread", "wholemeal bread 83"},
        {"dark chocolate 2 squares", "dark chocolate 20!"},
        {"milk chocolate bar", "milk chocolate 44"},
        {"granola bar", "granola bar 21"},
        {"maybe an apple?", "apple with skin 182!"},
        {"water", "water 200"},
        {"2 percent milk", "cow's milk 244!"},
        {"nothing", ""},
        {"", ""},
    };
    for (const auto& row : rows) {
        EXPECT_EQ(in_short(eaten_text(row.text)), row.read) << row.text;
    }
}

// A confidence of `sure_food` or more means the very food: of plain names, misspellings among them,
// it is never another one.
TEST(EatenText, a_sure_food_is_the_right_one) {
    int sure = 0;
    int right = 0;
    for (const FoodFacts& food : shipped_foods()) {
        std::vector<std::string> name = food_name_words(food.name);
        const auto candidates = food_candidates(name, {});
        ASSERT_FALSE(candidates.empty()) << food.name;
        EXPECT_EQ(candidates.front().food.name, food.name);
        // One letter left out of the longest word.
        auto longest = std::max_element(
            name.begin(), name.end(),
            [](const std::string& a, const std::string& b) { return a.size() < b.size(); });
        if (longest->size() >= 6) {
            longest->erase(longest->size() / 2, 1);
            const auto again = food_candidates(name, {});
            if (!again.empty() && again.front().confidence >= sure_food) {
                ++sure;
                right += again.front().food.name == food.name ? 1 : 0;
            }
        }
    }
    EXPECT_GT(sure, 100);
    EXPECT_EQ(right, sure);
}

// White bread 28 g a slice, 49.06 g carbohydrate and 2.7 g fibre in 100 g; cheddar 28 g, 1.28 g and
// none (NDB 18069, 01009).
TEST(EatenText, works_out_carbohydrate_fibre_and_energy) {
    const EatenText eaten = eaten_text("2 slices of white bread, 1 slice of cheddar");
    ASSERT_TRUE(eaten.found_all());
    EXPECT_NEAR(eaten.total->grams, 56 * 0.4906 + 28 * 0.0128, 1e-9);
    EXPECT_NEAR(eaten.available->grams, 56 * 0.4636 + 28 * 0.0128, 1e-9);
    EXPECT_NEAR(*eaten.fibre_g, 56 * 0.027, 1e-9);
    EXPECT_GT(eaten.total->half_width, 0);  // a slice is no weight
    EXPECT_EQ(eaten_text("100 g white bread").total->half_width, 0);
}

// Short-grain rice has no fibre value in the table: its available carbohydrate is not known, and so
// not the meal's.
TEST(EatenText, a_sum_with_an_unknown_part_is_unknown) {
    const EatenText eaten = eaten_text("100 g sushi rice with 100 g banana");
    EXPECT_NEAR(eaten.total->grams, 28.73 + 22.84, 1e-9);
    EXPECT_FALSE(eaten.available);
    EXPECT_FALSE(eaten_text("100 g banana and chicken soup").total);
    EXPECT_FALSE(eaten_text("100 g banana and chicken soup").found_all());
}

template <typename A, typename B>
concept can_be_added = requires(A a, B b) { a += b; };

TEST(Carbohydrate, total_and_available_are_never_added) {
    static_assert(can_be_added<TotalCarbohydrate, TotalCarbohydrate>);
    static_assert(!can_be_added<TotalCarbohydrate, AvailableCarbohydrate>);
    static_assert(!can_be_added<AvailableCarbohydrate, TotalCarbohydrate>);
    static_assert(!std::is_convertible_v<TotalCarbohydrate, AvailableCarbohydrate>);
    EXPECT_EQ(without_fibre(TotalCarbohydrate{10, 1}, 12).grams, 0);
}

namespace {

FoodFacts rye_loaf() {
    FoodFacts food;
    food.name = "rye loaf from the market";
    food.portion = "1 slice";
    food.portion_g = 60;
    food.carbohydrate_g = 40;
    food.basis = CarbohydrateBasis::available;
    return food;
}

const FoodFacts& shipped(const std::string& name) {
    for (const FoodFacts& food : shipped_foods()) {
        if (food.name == name) {
            return food;
        }
    }
    throw std::runtime_error("no such food: " + name);
}

ClientFoods tansys() {
    ClientFoods foods;
    foods.usual.push_back(rye_loaf());
    FoodFacts toast = shipped("rye bread");
    toast.portion = "1 slice";
    toast.portion_g = 45;
    foods.corrections.push_back({"toast", toast});
    const std::vector<FoodAmount> parts = {{shipped("lentils, boiled"), 400},
                                           {shipped("carrots, boiled"), 100}};
    Recipe stew{"stew of beans and carrots", 2, {}, {}};
    stew.facts = recipe_facts(stew.name, parts, stew.portions);
    foods.recipes.push_back(stew);
    return foods;
}

}  // namespace

TEST(EatenText, tries_the_clients_own_foods_first) {
    const ClientFoods own = tansys();
    const KnownFoods known{&own};
    EXPECT_EQ(in_short(eaten_text("toast", known)), "rye bread 45");
    EXPECT_EQ(in_short(eaten_text("2 slices of toast", known)), "rye bread 90");
    EXPECT_EQ(in_short(eaten_text("2 toasts", known)), "rye bread 90");
    EXPECT_EQ(in_short(eaten_text("tost", known)), "?tost");  // too short to guess at
    EXPECT_EQ(in_short(eaten_text("rye loaf", known)), "rye loaf from the market 60!");
    EXPECT_EQ(in_short(eaten_text("stew of beans and carrots with toast", known)),
              "stew of beans and carrots 250, rye bread 45");
    EXPECT_EQ(eaten_text("toast", known).foods[0].candidates[0].by, FoundBy::correction);
    EXPECT_TRUE(eaten_text("toast", known).foods[0].doubts.empty());
    EXPECT_EQ(in_short(eaten_text("toast")), "white bread 28!");
}

TEST(EatenText, takes_the_coachs_name_only_where_all_is_sure) {
    const ClientFoods own = tansys();
    const KnownFoods known{&own};
    EXPECT_EQ(clients_name(eaten_text("2 toasts and a banana, no jam", known)),
              "rye bread, banana");
    EXPECT_EQ(clients_name(eaten_text("banana", known)), std::nullopt);  // nothing of her own
    EXPECT_EQ(clients_name(eaten_text("toast with cheese", known)), std::nullopt);
    EXPECT_EQ(clients_name(eaten_text("toast with kedgeree", known)), std::nullopt);
}

// 400 g lentils (20.13 g) and 100 g carrots (8.22 g) in two portions: 44.37 g each.
TEST(ClientFoods, a_recipe_is_the_sum_of_its_parts) {
    const Recipe stew = tansys().recipes[0];
    EXPECT_NEAR(stew.facts.portion_g, 250, 1e-9);
    EXPECT_EQ(stew.facts.basis, CarbohydrateBasis::total);
    EXPECT_NEAR(*portion_of(stew.facts, 250).carbohydrate_g, (4 * 20.13 + 8.22) / 2, 1e-9);
}

TEST(ClientFoods, a_recipe_of_both_kinds_of_carbohydrate_is_available_or_unknown) {
    const std::vector<FoodAmount> parts = {{rye_loaf(), 100}, {shipped("banana"), 100}};
    const FoodFacts mixed = recipe_facts("mixed", parts, 1);
    EXPECT_EQ(mixed.basis, CarbohydrateBasis::available);
    EXPECT_NEAR(*mixed.carbohydrate_g, (40 + 22.84 - 2.6) / 2, 1e-9);
    const std::vector<FoodAmount> unknown = {{rye_loaf(), 100},
                                             {shipped("white rice, short-grain, boiled"), 100}};
    EXPECT_FALSE(recipe_facts("mixed", unknown, 1).carbohydrate_g);
    EXPECT_FALSE(recipe_facts("empty", {}, 1).carbohydrate_g);
    EXPECT_EQ(recipe_facts("empty", {}, 1).portion_g, 0);
}

TEST(EatenText, fills_in_only_what_is_missing_and_never_mixes_bases) {
    DiaryEntry entry;
    entry.kind = DiaryKind::meal;
    entry.text = "100 g banana";
    EXPECT_TRUE(fill_in(entry, eaten_text(entry.text), CarbohydrateBasis::total));
    EXPECT_NEAR(entry.carbohydrate_g->value, 22.84, 1e-9);
    EXPECT_TRUE(entry.carbohydrate_g->estimated);
    EXPECT_EQ(entry.carbohydrate_basis, CarbohydrateBasis::total);
    EXPECT_FALSE(fill_in(entry, eaten_text("100 g rice"), CarbohydrateBasis::total));
    EXPECT_EQ(basis_to_fill_in({entry}), CarbohydrateBasis::total);
    EXPECT_EQ(basis_to_fill_in({}), CarbohydrateBasis::total);
    DiaryEntry other = entry;
    other.carbohydrate_basis = CarbohydrateBasis::available;
    EXPECT_FALSE(basis_to_fill_in({entry, other}));
    other.carbohydrate_basis = CarbohydrateBasis::not_told;
    EXPECT_FALSE(basis_to_fill_in({other}));
}

TEST(FoodWords, every_word_names_a_food_of_the_table_and_none_stands_twice) {
    std::set<std::string> names;
    for (const FoodFacts& food : shipped_foods()) {
        names.insert(food.name);
    }
    std::set<std::string> met;
    for (const FoodWord& word : food_words()) {
        EXPECT_TRUE(names.contains(word.food)) << word.word;
        EXPECT_TRUE(met.insert(word.word).second) << word.word;
    }
    EXPECT_GT(met.size(), 150U);
}

// The known answer: a plain table of all distances.
RC_GTEST_PROP(FoodSpelling, letters_apart_agrees_with_a_plain_table, ()) {
    const auto word = rc::gen::container<std::string>(rc::gen::elementOf(std::string("abc")));
    const std::string a = *rc::gen::resize(9, word);
    const std::string b = *rc::gen::resize(9, word);
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) {
        for (std::size_t j = 0; j <= b.size(); ++j) {
            if (i == 0 || j == 0) {
                d[i][j] = i + j;
                continue;
            }
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1,
                                d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
            }
        }
    }
    RC_ASSERT(letters_apart(a, b, 20) == d[a.size()][b.size()]);
    RC_ASSERT(letters_apart(a, b, 1) == std::min<std::size_t>(2, d[a.size()][b.size()]));
}

RC_GTEST_PROP(EatenText, twice_the_grams_hold_twice_the_carbohydrate, ()) {
    const FoodFacts food = *rc::gen::elementOf(shipped_foods());
    RC_LOG() << food.name;
    const int grams = *rc::gen::inRange(1, 900);
    const auto once =
        eaten_text(std::to_string(grams) + " g " + food.name.substr(0, food.name.find(',')));
    const auto twice =
        eaten_text(std::to_string(2 * grams) + " g " + food.name.substr(0, food.name.find(',')));
    RC_ASSERT(once.total.has_value() == twice.total.has_value());
    if (once.total) {
        RC_ASSERT(std::abs(twice.total->grams - 2 * once.total->grams) < 1e-9);
    }
}

// Whatever is typed: sums never without every part, confidence between 0 and 1, nothing denied is
// counted, and a half width is never wider than a portion itself.
RC_GTEST_PROP(EatenText, keeps_its_promises_for_any_words, ()) {
    const auto word = rc::gen::elementOf(std::vector<std::string>{
        "rice",  "no",      "and",   "with", "2",        "1/2",        "slices",    "of",
        "bread", "or",      "150",   "g",    ",",        "banana",     "without",   "?",
        "a",     "few",     "large", "cup",  "zzz",      "not",        "x",         "half",
        "milk",  "instead", "(",     "-",    "\xC2\xBD", "9999999999", "chocolate", "bar"});
    const auto words = *rc::gen::container<std::vector<std::string>>(word);
    std::string text;
    for (const std::string& one : words) {
        text += one + " ";
    }
    const EatenText eaten = eaten_text(text);
    double sum = 0;
    bool all = true;
    for (const EatenFood& food : eaten.foods) {
        RC_ASSERT(food.confidence >= 0 && food.confidence <= 1);
        RC_ASSERT(!(food.denied && food.counted));
        RC_ASSERT(food.portion.half_width <= food.portion.grams + 1e-9);
        RC_ASSERT(food.sure() || !food.doubts.empty());
        RC_ASSERT(text.find(food.written) != std::string::npos);
        if (food.counted) {
            all = all && food.total;
            sum += food.total ? food.total->grams : 0;
        }
    }
    if (eaten.total) {  // the macro looks at both sides of an 'or'
        RC_ASSERT(all);
        RC_ASSERT(std::abs(eaten.total->grams - sum) < 1e-6);
    }
}
