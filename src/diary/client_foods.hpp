#pragma once

#include "diary/food_table.hpp"

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace tracewright {

/// So much of a food.
struct FoodAmount {
    FoodFacts food;
    double grams = 0;
};

/// A named list of foods with portions.
struct Recipe {
    std::string name;
    double portions = 1;  ///< how many the whole gives
    struct Part {
        std::string food;
        double grams = 0;
    };
    std::vector<Part> parts;
    FoodFacts facts;  ///< one portion of it as a food: `recipe_facts`
};

/// What the coach corrected once: when the client writes `said`, it is `food`, whose household
/// portion is what this client means where none is written.
struct FoodCorrection {
    std::string said;
    FoodFacts food;
};

/// One thing that is known of a client's foods.
using ClientFood = std::variant<FoodCorrection, Recipe, FoodFacts>;

/// By what it is known again, in small letters: "correction toast", "recipe lentil stew", "food rye
/// loaf". A second one so called takes the place of the first.
std::string called(const ClientFood& food);

/// What is known of one client's foods. Tried before any table, in this order.
struct ClientFoods {
    std::vector<FoodCorrection> corrections;
    std::vector<Recipe> recipes;
    std::vector<FoodFacts> usual;

    void add(ClientFood food);
    bool empty() const { return corrections.empty() && recipes.empty() && usual.empty(); }
};

/// A recipe as a food: its nutrients per 100 g from its parts', each known only while every part's
/// is; its portion the whole divided by `portions`. Carbohydrate is total where every part's is
/// total, else available where every part's can be told, else unknown: the two are never added.
/// Water that boils away is not known of: the weight is that of what went in. Without parts, or
/// with nothing that weighs anything, a food of which nothing is known.
FoodFacts recipe_facts(const std::string& name, std::span<const FoodAmount> parts, double portions);

}  // namespace tracewright
