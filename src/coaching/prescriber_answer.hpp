#pragma once

#include "diary/medicine_timeline.hpp"
#include "time/zone_history.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace tracewright {

/// What a prescriber was asked about.
enum class AskedAbout : std::uint8_t {
    low_carbohydrate,
    fasting,
    weight_loss,
    walking,
    diabetes_type
};

/// A prescriber's answer as the coach wrote it down: who, when, about what, until when.
struct PrescriberAnswer {
    AskedAbout about = AskedAbout::low_carbohydrate;
    bool agreed = false;  ///< for the type: it was checked and is type 2
    std::string by;
    CivilDate on;
    std::optional<CivilDate> valid_until;  ///< the last day; empty: the answer holds for 90 days
};

/// Whether an answer opens anything at that time: agreed, by someone, given before, not run out,
/// and no medicine was started, stopped or changed since the begin of its day (the day's order is
/// not known, so a change on the day itself counts as later). An answer about the type does not
/// lapse with medicines. The 90 days are ours, no source.
bool holds(const PrescriberAnswer& answer, Instant at, const MedicineTimeline& medicines,
           const ZoneHistory& clock);

/// The newest answer about it that holds; null if none does.
const PrescriberAnswer* answer_that_holds(std::span<const PrescriberAnswer> answers,
                                          AskedAbout about, Instant at,
                                          const MedicineTimeline& medicines,
                                          const ZoneHistory& clock);

}  // namespace tracewright
