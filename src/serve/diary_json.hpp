#pragma once

#include "intake/client_message.hpp"
#include "render/review_json.hpp"
#include "store/diary_book.hpp"
#include "store/meal_photo_record.hpp"
#include "time/zone_history.hpp"

#include <span>
#include <string>

namespace tracewright {

/// One day of the diary as the page lists it: each entry in words, with the parts it is corrected
/// by, and the numbers of its photos. Days before and after to go on to; none after today.
Json json_of_diary_day(std::span<const DiaryRecord> entries, std::span<const MealPhotoLine> photos,
                       CivilDate day, const ZoneHistory& clock, Instant now);

/// What a message was taken for: each part with its words, its doubts and its foods. `sums`: grams
/// are told; off where the eating screen is positive or not answered (safety rule 12).
Json json_of_message(std::span<const ProposedEntry> message, const ZoneHistory& clock, bool sums);

/// The words by which a food of a message is corrected: without its portion.
std::string said_of(const EatenFood& food);

}  // namespace tracewright
