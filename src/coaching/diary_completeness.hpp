#pragma once

#include "diary/diary_entry.hpp"
#include "time/zone_history.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// How much of the days a diary tells of. A day counts as written for a slot if a meal begins in it
/// by the client's clock: breakfast 04:00 to 10:30, lunch 10:30 to 15:30, dinner 15:30 to 22:00
/// (common practice, no source), or bears the slot's name.
struct DiaryCompleteness {
    int days = 0;
    int breakfasts = 0;
    int lunches = 0;
    int dinners = 0;
    int nights = 0;  ///< days with sleep written
    std::vector<CivilDate> nothing_written;

    /// Share of the three slots of all days that is written, 0 to 1; 0 for no days.
    double meals_share() const;
};

DiaryCompleteness diary_completeness(std::span<const DiaryEntry> diary,
                                     std::span<const CivilDay> days, const ZoneHistory& clock);

/// "Breakfast was written on 9 of 14 days, lunch on 7, dinner on 12, sleep on 10; nothing on 2."
std::string completeness_sentence(const DiaryCompleteness& completeness, WayOfWriting way);

}  // namespace tracewright
