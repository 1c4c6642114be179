#pragma once

#include "cli/file_options.hpp"
#include "cli/streams.hpp"

namespace tracewright {

/// What is in the files: the guesses, sample rows, every row's fate. Stores nothing.
Exit look(const FileOptions& options, bool json, const Streams& streams);

}  // namespace tracewright
