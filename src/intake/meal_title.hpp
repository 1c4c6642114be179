#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tracewright {

/// The meal that a title names: "Dinner carbs", "Frühstückszeit", "Snack 2", "Meal 1 time".
struct TitledMeal {
    std::string name;       ///< tells the meals of a row apart: "dinner", "snack 2"
    std::string_view slot;  ///< "breakfast", "lunch", "dinner", "snack"; empty for a numbered meal
    bool of_time = false;   ///< says time as well
    bool alone = false;     ///< says nothing else
};

/// By the words of a title in lower case, parted by single blanks. Empty if it names no meal of the
/// day: "Meal" alone is none.
std::optional<TitledMeal> titled_meal(std::string_view words);

}  // namespace tracewright
