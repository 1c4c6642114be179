#pragma once

#include "../client_story.hpp"

#include <chrono>

namespace tracewright {

/// A wall time of 2026.
inline WallTime in_2026(unsigned month, unsigned day, int hour, int minute = 0) {
    return CivilDate{std::chrono::year{2026} / std::chrono::month{month} / std::chrono::day{day}} +
           std::chrono::hours{hour} + std::chrono::minutes{minute};
}

/// The number of a date's day in the story.
inline int day_number(unsigned month, unsigned day) {
    return static_cast<int>(
        (std::chrono::floor<std::chrono::days>(in_2026(month, day, 0)) - first_story_day).count());
}

inline constexpr std::chrono::minutes two_weeks{14 * 1440};

}  // namespace tracewright
