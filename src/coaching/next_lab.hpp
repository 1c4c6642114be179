#pragma once

#include "coaching/client_facts.hpp"
#include "diary/medicine_timeline.hpp"

#include <string>

namespace tracewright {

/// The best date for the next laboratory A1c and what it waits for.
struct NextLab {
    CivilDate on;
    std::string because;  ///< "90 days after metformin changed"; empty: nothing to wait for
    bool ever = false;    ///< an A1c is on record
    /// In pregnancy, while planning one or when unsure: no date is ours to tell (safety rule 11).
    bool clinic_leads = false;
};

/// No sooner than 90 days after the last A1c, the last start, stop or change of a medicine, and the
/// last change agreed: A1c looks back 8 to 12 weeks (reference of docs/methods/a1c.md). Not before
/// today.
NextLab next_lab(const ClientFacts& facts, const MedicineTimeline& medicines,
                 const ZoneHistory& clock, Instant as_of);

}  // namespace tracewright
