#pragma once

#include "time/instant.hpp"

#include <chrono>
#include <cstddef>
#include <optional>
#include <vector>

namespace tracewright {

/// Rows of one repeated hour that follow one another in a file, the order turned so that time runs
/// forward.
struct RepeatedHour {
    std::vector<WallTime> walls;     ///< at least one
    std::chrono::seconds shift;      ///< how far the clock was set back
    std::optional<WallTime> before;  ///< shown by the row before them, where it is of that night
    std::optional<WallTime> after;   ///< and by the row after them
};

/// The row with which the second showing begins: 0 if all are of the second, their count if all are
/// of the first. Empty where their order doesn't tell.
///
/// What tells is a step back by which neither showing has a time twice, unless row by row; of such
/// the widest. It is at least half the shift, or the showings overlap: a row or two that merely
/// come late, and fill a hole of the showing before, tell nothing. Without a step back it tells if
/// the rows follow closely on the row before them or lead closely to the row after, and not both.
std::optional<std::size_t> second_showing_from(const RepeatedHour& hour);

/// The most common step of a sorted list; 0 if it has fewer than two. Of a long list the first 5000
/// tell.
std::chrono::seconds usual_step(const std::vector<WallTime>& sorted);

}  // namespace tracewright
