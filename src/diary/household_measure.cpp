#include "diary/household_measure.hpp"

#include "diary/food_spelling.hpp"

#include <array>

namespace tracewright {

namespace {

using Of = HouseholdMeasure::Of;

// Cup and spoons are the US ones of the shipped table (236.6, 14.8 and 4.9 ml); glass, bowl, plate,
// handful and the like, and all half widths, are ours, no source.
constexpr std::array measures{HouseholdMeasure{"g", Of::weight, 1, 0},
                              HouseholdMeasure{"kg", Of::weight, 1000, 0},
                              HouseholdMeasure{"oz", Of::weight, 28.35, 0},
                              HouseholdMeasure{"lb", Of::weight, 453.6, 0},
                              HouseholdMeasure{"ml", Of::volume, 1, 0},
                              HouseholdMeasure{"cl", Of::volume, 10, 0},
                              HouseholdMeasure{"dl", Of::volume, 100, 0},
                              HouseholdMeasure{"l", Of::volume, 1000, 0},
                              HouseholdMeasure{"cup", Of::volume, 236.6, 0.15},
                              HouseholdMeasure{"tbsp", Of::volume, 14.8, 0.2},
                              HouseholdMeasure{"tsp", Of::volume, 4.9, 0.2},
                              HouseholdMeasure{"spoon", Of::volume, 14.8, 0.4},
                              HouseholdMeasure{"glass", Of::volume, 200, 0.25},
                              HouseholdMeasure{"mug", Of::volume, 300, 0.25},
                              HouseholdMeasure{"bowl", Of::volume, 300, 0.35},
                              HouseholdMeasure{"plate", Of::volume, 400, 0.35},
                              HouseholdMeasure{"handful", Of::volume, 60, 0.35},
                              HouseholdMeasure{"ladle", Of::volume, 120, 0.25},
                              HouseholdMeasure{"scoop", Of::volume, 60, 0.3},
                              HouseholdMeasure{"can", Of::volume, 330, 0.2},
                              HouseholdMeasure{"bottle", Of::volume, 500, 0.35},
                              HouseholdMeasure{"pint", Of::volume, 520, 0.1},
                              HouseholdMeasure{"slice", Of::piece, 0, 0.15},
                              HouseholdMeasure{"piece", Of::piece, 0, 0.2},
                              HouseholdMeasure{"portion", Of::piece, 0, 0.35},
                              HouseholdMeasure{"pack", Of::piece, 0, 0.4},
                              HouseholdMeasure{"bar", Of::piece, 0, 0.3},
                              HouseholdMeasure{"square", Of::weight, 10, 0.3},
                              HouseholdMeasure{"strip", Of::piece, 0, 0.3}};

struct OtherName {
    const char* word;
    const char* name;
};
constexpr std::array other_names{
    OtherName{"gr", "g"},         OtherName{"gram", "g"},          OtherName{"gramme", "g"},
    OtherName{"kilo", "kg"},      OtherName{"ounce", "oz"},        OtherName{"pound", "lb"},
    OtherName{"litre", "l"},      OtherName{"liter", "l"},         OtherName{"tablespoon", "tbsp"},
    OtherName{"teaspoon", "tsp"}, OtherName{"spoonful", "spoon"},  OtherName{"plateful", "plate"},
    OtherName{"bowlful", "bowl"}, OtherName{"serving", "portion"}, OtherName{"helping", "portion"},
    OtherName{"packet", "pack"},  OtherName{"tin", "can"},         OtherName{"tbs", "tbsp"},
    OtherName{"cupful", "cup"},   OtherName{"rasher", "slice"},    OtherName{"wedge", "slice"}};

}  // namespace

const HouseholdMeasure* measure_called(std::string_view word) {
    for (const OtherName& other : other_names) {
        if (same_food_word(word, other.word)) {
            word = other.name;
            break;
        }
    }
    for (const HouseholdMeasure& one : measures) {
        if (word == one.name || (word.size() > 3 && same_food_word(word, one.name))) {
            return &one;
        }
    }
    return nullptr;
}

}  // namespace tracewright
