#pragma once

#include "coaching/proposed.hpp"

#include <string_view>
#include <vector>

namespace tracewright {

// What the words of a change say, whatever kind it was filed under. English, ours, no source; they
// rather close too much than too little, but what is not met here is no leave: the coach reads too,
// and answers what a change in words of their own does (WhatItDoes).

/// What words would have the client do: "skip breakfast" is skipping a meal, "fast until noon"
/// fasting, "lose 5 kg" losing weight, "20 g carbs a day" little carbohydrate.
std::vector<Proposed> proposed_in(std::string_view words);

/// Whether the words hold a limit beside food: "half portions at each meal", "no sweets". A change
/// that some template offers may well ("a smaller portion of starch"); one in a coach's own words
/// then counts as eating less.
bool limits_eating(std::string_view words);

/// Whether the words name a dose, a way of taking or a supplement, without a medicine's name:
/// "inject 2 units less", "half a pill", "the evening one", "berberine".
bool speaks_of_taking(std::string_view words);

/// Whether a word is a medicine's name but for a letter or two: "metphormin", "gliclazid".
bool nearly_names_a_medicine(std::string_view words);

}  // namespace tracewright
