#pragma once

#include "serve/reply.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace tracewright {

/// The number in a place's braces after the handle. Empty for anything but a whole one above 0.
std::optional<std::int64_t> asked_number(const std::string& text);

/// What such a place answers where nothing bears the number.
Reply no_such_number();

}  // namespace tracewright
