#pragma once

#include "diary/client_foods.hpp"
#include "diary/diary_entry.hpp"

namespace tracewright {

/// How many meals had their carbohydrate worked out from their texts.
struct WorkedOut {
    int meals = 0;
    int texts = 0;             ///< meals with a text and no carbohydrate
    bool by_no_basis = false;  ///< the diary's own numbers don't tell whether fibre is in them
};

/// What the meals' texts amount to by the client's own foods and the tables, and the names the
/// coach gave to what the client writes: so that the same food is compared as one.
WorkedOut work_out_meals(Diary& diary, const ClientFoods& own);

}  // namespace tracewright
