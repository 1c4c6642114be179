#pragma once

#include "time/instant.hpp"

#include <optional>
#include <string>

namespace tracewright {

/// A day as 2026-03-02, of the years 1900 to 2100. Empty for anything else.
std::optional<CivilDate> day_of_text(const std::string& text);

/// The same written.
std::string day_text(CivilDate day);

}  // namespace tracewright
