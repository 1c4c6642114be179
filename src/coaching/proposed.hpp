#pragma once

#include <cstdint>

namespace tracewright {

/// What a plan, a change or a trial arm would have the client do.
enum class Proposed : std::uint8_t {
    low_carbohydrate,  ///< below 130 g a day
    fasting,           ///< over 12 h without food
    meal_skipping,
    weight_loss,
    food_change,  ///< another food, order, portion or time of a meal
    walking,
    other
};

}  // namespace tracewright
