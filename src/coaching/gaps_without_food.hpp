#pragma once

#include "diary/diary_entry.hpp"
#include "time/zone_history.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// A stretch of more than 12 h in which the diary has no meal.
struct GapWithoutFood {
    Instant from;
    Instant to;               ///< the next meal, or how far the diary can tell that there was none
    bool over_a_day = false;  ///< a whole civil day lies in it on which other things were written

    Interval interval() const { return {from, to}; }
};

/// Between two meals, and from the last one to `as_of`. A civil day without any entry of the
/// client's tells nothing: the gap ends before it, and counts then only where words of fasting
/// ("water fast", "ate nothing") or a whole day of other entries stand in it. So does one that no
/// meal has ended yet. A week and more of other entries without such words is a diary without
/// meals, no fast. Levels are no sign of a diary that was kept: a meter's log has them too.
std::vector<GapWithoutFood> gaps_without_food(std::span<const DiaryEntry> diary,
                                              const ZoneHistory& clock, Instant as_of);

}  // namespace tracewright
