#pragma once

#include "diary/diary_entry.hpp"
#include "trace/wear.hpp"

#include <span>

namespace tracewright {

/// Sets why a wear ended where the diary tells it ("sensor fell off", "sensor failed") from an hour
/// before to a day after its last reading, and nothing else is known.
void set_ends_told(std::span<Wear> wears, std::span<const DiaryEntry> diary);

}  // namespace tracewright
