#pragma once

#include "measures/shown_range.hpp"

#include <chrono>
#include <string>

namespace tracewright {

/// Whether the time seen can be told as hours of a day: 70 % of one day of 24 hours or more, as a
/// day needs to count (trace/fitness.hpp). Ours, no source.
bool tells_hours_of_a_day(std::chrono::seconds seen);

/// "17 h of the 24 hours in range"; of too little seen "35 min in range of the 2 h seen"; "nothing
/// was seen".
std::string in_range_words(const TimeByRange& time);

}  // namespace tracewright
