#pragma once

#include "cli/practice_options.hpp"
#include "cli/streams.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

inline constexpr int reminders_json_version = 1;

struct RemindOptions {
    std::string client;  ///< handle or name; empty: all
    bool rules = false;  ///< show the rules only
    std::string quiet_from;
    std::string quiet_to;
    std::optional<int> silent_hours;
    std::optional<int> most_a_day;
    std::vector<std::string> off;
    std::vector<std::string> on;
    bool json = false;

    bool changes() const {
        return !quiet_from.empty() || !quiet_to.empty() || silent_hours || most_a_day ||
               !off.empty() || !on.empty();
    }
};

/// What is due between wears, with words to copy; or shows and sets the practice's rules. Nothing
/// is sent.
Exit remind(const PracticeOptions& practice, const RemindOptions& options, const Streams& streams);

}  // namespace tracewright
