#pragma once

#include "intake/written_time.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// Reads one written time from left to right, whatever its form (see `written_time`, which is what
/// to call). `text` plain, trimmed and short.
std::optional<WrittenTime> time_read_from(std::string_view text);

}  // namespace tracewright
