#pragma once

#include "time/instant.hpp"
#include "time/way_of_writing.hpp"

#include <chrono>
#include <string>

namespace tracewright {

/// So long after midnight, 0 to 24 h, to the minute: "02:40", "24:00"; "2:40 am", "12:00 am".
std::string clock_words(std::chrono::minutes of_day, WayOfWriting way);

/// "3 March"; "March 3".
std::string day_of_month(CivilDate date, WayOfWriting way);

}  // namespace tracewright
