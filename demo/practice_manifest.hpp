#pragma once

#include "client_files.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace tracewright {

/// A life with its files.
struct PracticeClient {
    ClientLife life;
    std::vector<ClientFile> files;
};

/// Everything of the invented practice that no file of readings bears, as JSON: its today, and per
/// client the facts, zones, wears, files with what is in them, and the planted truths. Times are
/// wall times of the client's clock where no offset stands behind them. Described in README.md.
std::string practice_manifest(const std::vector<PracticeClient>& clients, std::uint64_t seed);

}  // namespace tracewright
