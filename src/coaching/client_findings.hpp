#pragma once

#include "coaching/care_input.hpp"
#include "coaching/client_facts.hpp"
#include "coaching/client_review.hpp"
#include "coaching/diary_completeness.hpp"
#include "diary/medicine_timeline.hpp"

#include <optional>
#include <vector>

namespace tracewright {

// What a client's facts add to a review, one finding each.

/// "Why did they come?", in their words. Empty if it was not asked.
std::optional<Finding> why_they_came_finding(const ClientFacts& facts);

/// The medicines of the window with starts, stops and changes in it, and what is to be asked.
Finding medicines_finding(const MedicineTimeline& medicines, Interval window,
                          const ZoneHistory& clock);

/// Cautions that bear on this review: eating screen, substances that mislead sensors, an SGLT2
/// inhibitor beside little carbohydrate, what does not fit type 2, the end of consent. Empty if
/// there is none.
std::optional<Finding> care_finding(const ClientFacts& facts, const MedicineTimeline& medicines,
                                    const FirstReview& review);

Finding diary_finding(const DiaryCompleteness& completeness, WayOfWriting way);

/// The one thing agreed. Says so if nothing was.
Finding agreed_change_finding(const CareInput& care);

/// Stretches shaped like pressure on the sensor, with and without the label. Empty without any.
std::optional<Finding> dips_finding(const LadderInput& input, const ClientFacts& facts);

}  // namespace tracewright
