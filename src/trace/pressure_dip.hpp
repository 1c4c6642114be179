#pragma once

#include "trace/wear.hpp"

#include <vector>

namespace tracewright {

/// A stretch shaped as lying on a sensor shapes it: a fall of at least 25 mg/dL within 15 minutes
/// from a flat trace (less than 0.5 mg/dL a minute over the 20 minutes before), 10 to 90 minutes at
/// the bottom, and at least 70 % of the fall back within 20 minutes. Shape only: whether it may be
/// called a pressure dip is decided with the client's facts (coaching/pressure_dip_label.hpp), and
/// nothing is left out because of it. Source of the limits: our own rule; there is no published
/// numeric definition (Baysal et al. 2014, 10.1177/1932296814553267, describes the shape).
struct DipShape {
    Interval stretch{};  ///< from before the fall until it is back
    Instant bottom;
    Glucose lowest;
};

/// In order of time; none overlap. Sensors that report less often than each 15 minutes show none.
std::vector<DipShape> dip_shapes(const Wear& wear);

}  // namespace tracewright
