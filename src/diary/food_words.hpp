#pragma once

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// An everyday word for a food of the shipped table: data/food-words.csv.
struct FoodWord {
    std::string word;
    std::string food;
    /// The word stands for several foods, of which this is the usual one ("bread"): to be told.
    bool usual = false;
    std::vector<std::string> parts;  ///< the word's own words
};

/// The table that the program carries within itself, in the file's order. Ours, no source.
std::span<const FoodWord> food_words();

}  // namespace tracewright
