#pragma once

#include <tl/expected.hpp>

#include <string>

namespace tracewright {

/// Asks at the terminal for a line that is not shown as it is typed. Error: there is no terminal,
/// or nothing was typed.
tl::expected<std::string, std::string> hidden_line(const std::string& question);

}  // namespace tracewright
