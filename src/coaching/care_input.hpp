#pragma once

#include "coaching/client_facts.hpp"
#include "diary/diary_entry.hpp"
#include "diary/medicine_timeline.hpp"
#include "time/zone_history.hpp"
#include "trace/wear.hpp"

#include <span>

namespace tracewright {

/// What the rules of care read of one client: all that is known, raw, and the moment of the
/// question. Diary ascending by time.
struct CareInput {
    const ClientFacts& facts;
    std::span<const Wear> wears;
    std::span<const DiaryEntry> diary;
    const MedicineTimeline& medicines;
    const ZoneHistory& clock;
    Instant as_of;
};

}  // namespace tracewright
