#pragma once

#include "diary/diary_entry.hpp"
#include "render/review_json.hpp"
#include "serve/request_body.hpp"
#include "time/zone_history.hpp"

#include <tl/expected.hpp>

namespace tracewright {

/// The parts of an entry that are corrected on the page, as texts: kind, date, time ("" where it is
/// not known), text, carbohydrate_g ("" where none was written).
Json json_of_diary_form(const DiaryEntry& entry, const ZoneHistory& clock);

/// The entry with those parts as told. What another kind or text tells of level, number, length and
/// carbohydrate is read anew (`unit`: of a level without one); else what lasts keeps its length. A
/// correction of the time makes it certain, an empty one uncertain at noon. Error: 422, by the part
/// that does not fit; a time that the clock never showed is none.
tl::expected<DiaryEntry, Reply> corrected_by(const DiaryEntry& entry, const Fields& fields,
                                             const ZoneHistory& clock, GlucoseUnit unit,
                                             Instant now);

}  // namespace tracewright
