#pragma once

#include "store/store_error.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// Writes a file that is there whole and on the disk, or not at all: beside, synced, renamed. Only
/// its owner may read it. Replaces what was there; into what is no file (a pipe, a terminal) it is
/// written as it is.
Stored<void> write_whole_file(const std::string& path, std::span<const std::uint8_t> bytes);
Stored<void> write_whole_file(const std::string& path, std::string_view text);

Stored<std::vector<std::uint8_t>> read_whole_file(const std::string& path);

/// Puts `half`, which is complete, in the place of `path`, and on the disk.
Stored<void> put_in_place(const std::string& half, const std::string& path);

}  // namespace tracewright
