#pragma once

#include "trace/mark.hpp"
#include "trace/wear.hpp"

#include <chrono>
#include <vector>

namespace tracewright {

struct SuspectRules {
    /// Common practice, no source: sensors ask for 30 to 120 minutes by model.
    std::chrono::seconds warm_up = std::chrono::minutes{60};
};

/// The suspect stretches of a wear, in order of time, from its readings alone: warm-up, impossible
/// rates, stuck values, a failing last day, implausible values. Nothing is left out by this; a
/// caller that leaves marked stretches out says so. Never a pressure dip: that label needs an
/// answered medicine list (safety rule 4).
std::vector<Mark> suspect_stretches(const Wear& wear, const SuspectRules& rules = {});

}  // namespace tracewright
