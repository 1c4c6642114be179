#pragma once

#include "intake/written_time.hpp"

#include <optional>

namespace tracewright {

/// Days since 1899-12-30 (or 1904-01-01) with the time of day as a fraction, to the nearest second;
/// within the years 2000 to 2100 for dates, 0 to 1 for a time alone. A whole day bears no time of
/// day: it may be midnight or a date. Empty otherwise.
std::optional<WrittenTime> serial_time(double serial, bool from_1904);

}  // namespace tracewright
