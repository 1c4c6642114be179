#pragma once

#include "practice_manifest.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <vector>

namespace tracewright {

/// Plays every story of the practice.
std::vector<PracticeClient> practice_clients(std::uint64_t seed);

/// Writes the practice into `folder`, made if need be: a folder for each client with the files, and
/// practice.json. Files of the same names are written anew; nothing else is touched. The same seed
/// writes the same bytes. The number of files written; else a sentence that says what failed.
tl::expected<int, std::string> write_practice(const std::vector<PracticeClient>& clients,
                                              const std::string& folder, std::uint64_t seed);

/// Writes bytes to a file; false if that fails.
bool write_file(const std::string& path, const std::string& bytes);

}  // namespace tracewright
