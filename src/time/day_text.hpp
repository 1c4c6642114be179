#pragma once

#include "time/instant.hpp"

#include <optional>
#include <string>

namespace tracewright {

/// A day as 2026-03-02. Empty for anything else.
std::optional<CivilDate> day_of_text(const std::string& text);

/// The same written.
std::string day_text(CivilDate day);

}  // namespace tracewright
