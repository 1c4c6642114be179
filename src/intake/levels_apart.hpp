#pragma once

#include "intake/bring_in.hpp"

#include <optional>

namespace tracewright {

/// The middle step between an intake's readings, where it is longer than two hours: no sensor
/// reports so seldom (ours, no source), while a meter is used a few times a day. Empty otherwise.
std::optional<std::chrono::seconds> levels_apart(const Intake& intake);

/// "6 h", "45 min".
std::string step_words(std::chrono::seconds step);

}  // namespace tracewright
