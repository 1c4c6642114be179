#pragma once

#include "trace/mark.hpp"
#include "trace/wear.hpp"

#include <chrono>
#include <string>
#include <vector>

namespace tracewright {

/// What a coach told of a stretch of a client's trace: that it is suspect, or that what was marked
/// from just there to there counts after all. (No word makes an implausible value count.)
struct ToldStretch {
    Interval stretch{};
    bool suspect = true;
    std::string why;
};

struct SuspectRules {
    /// Common practice, no source: sensors ask for 30 to 120 minutes by model.
    std::chrono::seconds warm_up = std::chrono::minutes{60};
    std::vector<ToldStretch> told = {};  ///< of all wears; none from files alone
};

/// The suspect stretches of a wear, in order of time: from its readings warm-up, impossible rates,
/// stuck values, a failing last day, implausible values; then what a coach told. Nothing is left
/// out by this; a caller that leaves marked stretches out says so. Never a pressure dip: that label
/// needs an answered medicine list (safety rule 4).
std::vector<Mark> suspect_stretches(const Wear& wear, const SuspectRules& rules = {});

}  // namespace tracewright
