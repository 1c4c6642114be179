#pragma once

#include <string_view>

namespace tracewright {

/// The bytes of data/habit-effects.csv as the program was built with them.
std::string_view habit_effects_csv();

}  // namespace tracewright
