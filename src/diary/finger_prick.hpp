#pragma once

#include "diary/diary_entry.hpp"

#include <cstdint>

namespace tracewright {

/// What a meter showed instead of a number: "LO" or "HI", or a bound such as "<20".
enum class MeterLimit : std::uint8_t { none, shows_low, shows_high, below_level, above_level };

/// Of a finger-prick, by its `number_unit`, which holds the mark; none for any other entry.
MeterLimit meter_limit(const DiaryEntry& entry);

/// Makes `entry` a finger-prick whose level lies beyond `limit`. Where the meter showed LO or HI
/// its own limit is not known: the level is set to where meters usually end (20 and 600 mg/dL, 1.1
/// and 33.3 mmol/L; common practice, no source), for its place in a band and never to be printed. A
/// LO counts as very low, a HI as above 300 (safety rule 2). A bound keeps the level it has.
void set_meter_limit(DiaryEntry& entry, MeterLimit limit, GlucoseUnit unit);

/// A finger-prick with a level that was measured, not only bounded: what pairs and figures need.
bool has_measured_level(const DiaryEntry& entry);

}  // namespace tracewright
