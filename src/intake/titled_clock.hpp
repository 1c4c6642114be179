#pragma once

#include "intake/clock_text.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// A time of day in forms that are one only where the column's title says so: "0.07", "00.07 Uhr",
/// "0h07", "8 h". Lower and upper case alike.
std::optional<WrittenTime> titled_clock(std::string_view plain_text);

}  // namespace tracewright
