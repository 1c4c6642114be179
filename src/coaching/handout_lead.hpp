#pragma once

#include "coaching/handout_words.hpp"
#include "coaching/paper_client.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What stands before all else on a client's page: of what the ladder names and nobody has answered
/// the latest of each kind, emergencies first, then very lows, at most two; a very low within the
/// review's window also when it was answered (safety rule 2). Empty where there is nothing.
std::vector<std::string> handout_lead(const PaperClient& client, const HandoutWords& words);

}  // namespace tracewright
