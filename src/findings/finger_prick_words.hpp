#pragma once

#include "diary/diary_entry.hpp"

#include <string>

namespace tracewright {

/// The level of a finger-prick in `unit`: "3.2 mmol/L", "below 20 mg/dL", and where the meter
/// showed no number "LO, below what the meter can show". Empty without a level.
std::string finger_prick_level(const DiaryEntry& entry, GlucoseUnit unit);

/// "a finger-prick of 3.2 mmol/L", "a finger-prick that showed LO, below what the meter can show".
std::string finger_prick_words(const DiaryEntry& entry, GlucoseUnit unit);

}  // namespace tracewright
