#pragma once

#include "time/instant.hpp"

#include <cstdint>

namespace tracewright {

/// A photo of a meal, without the photo itself.
struct MealPhotoLine {
    std::int64_t id = 0;
    Instant at;  ///< when it was added
    std::int64_t coach = 0;
    std::int64_t entry = 0;  ///< the meal as it stands in the diary now
    Instant meal_at;
};

}  // namespace tracewright
