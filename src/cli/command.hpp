#pragma once

#include "cli/streams.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// The whole command: `args` without the program's name.
Exit run_command(const std::vector<std::string>& args, const Streams& streams);

}  // namespace tracewright
