#pragma once

#include "trace/wear.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// The word of commands and forms: "fell-off", "not-told".
std::string_view name_of(WearEnd end);
/// Empty for another word.
std::optional<WearEnd> wear_end_called(std::string_view word);

}  // namespace tracewright
