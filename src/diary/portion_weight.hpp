#pragma once

#include "diary/doubt.hpp"
#include "diary/food_table.hpp"
#include "diary/written_portion.hpp"

#include <vector>

namespace tracewright {

/// Grams, true within `half_width` of them, and what was not sure.
struct PortionWeight {
    double grams = 0;
    double half_width = 0;
    std::vector<Doubt> doubts;
};

/// What the portion weighs of this food. Weights are taken as written; volumes by the weight of the
/// food's own cup or spoon, else as water for drinks; slices, pieces and bare counts by its
/// household portion. A portion that is not written is the household one within half of it, unless
/// `own` says that it is the client's usual one. Ours, no source.
PortionWeight portion_weight(const WrittenPortion& portion, const FoodFacts& food, bool own);

/// Whether it is drunk: by its name or by a portion in fluid ounces.
bool is_drink(const FoodFacts& food);

}  // namespace tracewright
