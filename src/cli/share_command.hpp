#pragma once

#include "cli/practice_options.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace tracewright {

/// What was typed for `share`.
struct ShareOptions {
    std::string client;  ///< handle or whole name
    std::string to;
    std::string purpose;
    std::string kinds;  ///< with commas between; empty: hours in range and lows
    int days = 14;
    std::string until;                   ///< the last day; empty: in 30 days
    std::optional<std::int64_t> revoke;  ///< the number of one
    std::string page;                    ///< a file: write a dated page instead of giving a share
    bool json = false;
};

inline constexpr int shares_json_version = 1;

/// Gives a share and tells its address once, writes a dated page that can't be taken back, revokes
/// one, or lists them all with every look. A page holds what a share of the same kinds would show
/// now: nothing without consent, nothing that the eating screen closes.
Exit share_of(const PracticeOptions& options, const ShareOptions& words, const Streams& streams);

}  // namespace tracewright
