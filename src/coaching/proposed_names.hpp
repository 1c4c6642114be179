#pragma once

#include "coaching/client_facts.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// "low-carbohydrate", "fasting", "meal-skipping", "weight-loss", "food-change", "walking" or
/// "other". Empty for anything else.
std::optional<Proposed> proposed_called(std::string_view name);

/// "nothing", "as-much" or "less"; an empty text is not answered. Empty for anything else.
std::optional<EatingChange> eating_change_called(std::string_view name);

/// "yes" or "no"; an empty text is not answered. Empty for anything else.
std::optional<Answered> answer_called(std::string_view name);

}  // namespace tracewright
