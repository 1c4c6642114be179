#pragma once

#include "coaching/client_facts.hpp"
#include "diary/medicine_timeline.hpp"
#include "time/zone_history.hpp"

namespace tracewright {

/// A client's medicines over time, dates read by the client's clock: a medicine is taken from the
/// begin of its first day to the end of its last. Who is asked also tells what was stopped lately:
/// the answer reaches back 90 days (our own rule, no source), before that the list counts as not
/// asked, whatever start dates it has. A medicine whose start is the day of asking may have been
/// taken before: it counts so wherever that is the riskier reading.
MedicineTimeline client_medicines(const ClientFacts& facts, const ZoneHistory& clock);

}  // namespace tracewright
