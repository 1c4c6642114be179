#pragma once

#include "findings/first_review.hpp"
#include "render/review_json.hpp"
#include "serve/shown_readings.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// When the last reading was and how old it is, in words; null for none.
Json json_of_last_reading(std::optional<Instant> last, const ZoneHistory& clock, Instant now);

/// What makes a day unlike the others (illness, cortisone), in words, by civil date.
using DaysUnlike = std::map<CivilDate, std::vector<std::string>>;
DaysUnlike days_unlike(const FirstReview& sheets);

/// The days of a client with the sentence over each sheet, oldest first.
Json json_of_days(const FirstReview& sheets);

/// What the page needs to draw a stretch of a client's time and to label it by the client's clock,
/// so that it converts no zone itself: traces of all wears in hundredths of the client's unit with
/// gaps as null, band edges, clock ticks, day borders, lanes, marks, the last reading. Moments are
/// seconds since 1970, UTC. `head` comes first: the fields of a day sheet. `detail` thins the
/// readings only.
std::string stretch_text(const FirstReview& sheets, Interval stretch, Detail detail, Instant now,
                         Json head);

}  // namespace tracewright
