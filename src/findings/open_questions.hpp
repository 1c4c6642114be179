#pragma once

#include "findings/what_goes_with_it.hpp"

#include <vector>

namespace tracewright {

/// Codes of the findings that lead where nothing is answered, and of meals told apart.
inline constexpr const char* none_answered_code = "goes_with";
inline constexpr const char* meals_code = "meals";

/// What would tell, of the first question that these data leave open; nothing where none is.
Next next_of_the_first_open(const std::vector<StandingQuestion>& ranked);

}  // namespace tracewright
