#pragma once

#include "coaching/proposed.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// "low-carbohydrate", "fasting", "meal-skipping", "weight-loss", "food-change", "walking" or
/// "other". Empty for anything else.
std::optional<Proposed> proposed_called(std::string_view name);

}  // namespace tracewright
