#pragma once

#include <string_view>

namespace tracewright {

/// The bytes of data/foods.csv and data/food-words.csv as the program was built with them.
std::string_view foods_csv();
std::string_view food_words_csv();

}  // namespace tracewright
