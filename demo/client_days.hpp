#pragma once

#include "client_story.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace tracewright {

/// A meal as it was eaten, not as it was written.
struct EatenMeal {
    WallTime at;
    Slot slot = Slot::breakfast;
    Food food;
    double carbohydrate_g = 0;
    bool will_be_written = true;  ///< of planned meals; the habit decides the rest
};

/// What a day was like. The night of a day is the one that ends on its morning.
struct StoryDay {
    int number = 0;
    CivilDate date;
    WallTime bed;  ///< of the evening before
    WallTime wake;
    double slept_hours = 0;
    double dinner_hour = 0;
    std::vector<EatenMeal> meals;  ///< ascending
    std::optional<WallTime> walk;  ///< after dinner, for half an hour
    double kp3_factor = 1;         ///< of the day, lognormal, SD 12 %, AR(1) 0.3
    double vmx_factor = 1;         ///< likewise
    double night_factor = 1;       ///< of kp1, the night's own, SD 4 %

    double hours_short() const { return slept_hours < 7 ? 7 - slept_hours : 0; }
    double hours_late() const { return dinner_hour > 19 ? dinner_hour - 19 : 0; }
};

inline constexpr int walk_minutes = 30;

/// The days of a story, from the day before the first to the last: day `n` of the story stands at
/// n + 1. The same story and seed give the same days, whatever its effects are.
std::vector<StoryDay> client_days(const ClientStory& story, std::uint64_t seed);

}  // namespace tracewright
