#pragma once

#include "measures/day_sums.hpp"

#include <vector>

namespace tracewright {

/// Adds to the sums of `days`, the days of `view`, what the course of glucose gives: steps between
/// neighbours without a gap, and pairs a day, 1, 2 and 4 hours apart. Each counts for the day of
/// its later reading. `days` is not empty.
void sum_course(const TraceView& view, const ZoneHistory& zones, std::vector<DayOfTrace>& days);

}  // namespace tracewright
