#pragma once

#include "trace/wear.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// A level told of a moment for which another was told too.
struct HeldLevel {
    Instant at;
    Glucose value;
};

/// Gives each of `held` to the wear it lies in, else to the last that began before it, else to the
/// first. Without a wear nothing is given.
void give_held(std::vector<Wear*> wears, std::span<const HeldLevel> held);
void give_held(std::vector<Wear>& wears, std::span<const HeldLevel> held);

/// A moment for which several levels were told, one stored there among them.
struct DisputedMoment {
    Instant at;
    Glucose lowest;
    Glucose highest;
};

/// Those of a wear, in order.
std::vector<DisputedMoment> disputed_moments(const Wear& wear);

}  // namespace tracewright
