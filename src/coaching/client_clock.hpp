#pragma once

#include "coaching/client_facts.hpp"
#include "time/zone_history.hpp"

namespace tracewright {

/// The client's clock from the zones told, written as the practice writes: each change at its wall
/// time in the zone that was left.
/// Without any: floating civil time. A zone that is not known, a change out of order or before 1900
/// is left out: none is told any more, some may be stored.
ZoneHistory client_clock(const ClientFacts& facts);

}  // namespace tracewright
