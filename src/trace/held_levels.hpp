#pragma once

#include "trace/wear.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// Gives each of `held` to the wear it lies in, else to the last that began before it, else to the
/// first. `wears` in order of their starts; without any, nothing is given.
void give_held(std::span<Wear* const> wears, std::span<const Reading> held);

/// A moment for which several levels were told, one stored there among them.
struct DisputedMoment {
    Instant at;
    Glucose lowest;
    Glucose highest;
};

/// Those of a wear, in order.
std::vector<DisputedMoment> disputed_moments(const Wear& wear);

}  // namespace tracewright
