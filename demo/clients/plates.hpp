#pragma once

#include "../client_story.hpp"

#include <vector>

namespace tracewright::plates {

// What the invented clients eat. Carbohydrate by ordinary portions, from general food tables,
// rounded; for a made-up life that is exact enough.
inline std::vector<Food> breakfasts() {
    return {{"porridge with apple", 56},
            {"two slices of rye bread, cheese", 36},
            {"yoghurt with oats and berries", 48},
            {"wholemeal bread, egg", 32},
            {"muesli with milk", 62}};
}
inline std::vector<Food> lunches() {
    return {{"lentil soup, bread", 60},
            {"salad with chicken, roll", 38},
            {"pasta with tomato sauce", 85},
            {"potatoes, quark, linseed oil", 55},
            {"vegetable stew", 40}};
}
inline std::vector<Food> snacks() {
    return {{"apple", 22}, {"a piece of cake", 42}, {"handful of nuts", 5}, {"banana", 28}};
}
inline std::vector<Food> dinners() {
    return {{"fish, potatoes, beans", 50},
            {"bread, cold meat, gherkins", 48},
            {"chicken, vegetables, bulgur", 58},
            {"vegetable omelette, bread", 36},
            {"chilli with beans and rice", 70}};
}

}  // namespace tracewright::plates
