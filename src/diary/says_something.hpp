#pragma once

#include <string_view>

namespace tracewright {

/// Whether a text holds a letter or a digit of any script. Where a reason or a name is asked for,
/// blanks, dots and dashes tell none: they would open what the reason is asked for.
bool says_something(std::string_view text);

}  // namespace tracewright
