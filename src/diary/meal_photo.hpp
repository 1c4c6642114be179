#pragma once

#include <cstddef>
#include <string>

namespace tracewright {

/// A photo of a meal as it is kept: a JPEG written anew from its pixels alone, upright, so that no
/// place, device, time, comment or small picture of the original is in it (intake/photo.hpp).
struct MealPhoto {
    std::string jpeg;
};

/// Own rules, no source: a photo helps to remember a meal, it is no album.
inline constexpr std::size_t longest_meal_photo = 1024UL * 1024;  ///< bytes, as kept
inline constexpr std::size_t most_photos_of_a_meal = 4;

}  // namespace tracewright
