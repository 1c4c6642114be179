#pragma once

#include "time/instant.hpp"

#include <string>

namespace tracewright {

/// "2026-03-02 08:15".
std::string wall_text(WallTime wall);

}  // namespace tracewright
