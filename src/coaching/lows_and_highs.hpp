#pragma once

#include "diary/diary_entry.hpp"
#include "time/zone_history.hpp"
#include "trace/wear.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// A stretch or finger-prick that was low, very low or very high, as a letter lists it.
struct LowOrHigh {
    Instant at;
    bool low = true;
    bool very_low = false;
    bool above_300 = false;  ///< mg/dL, as on the ladder: its highest is told with its time
    std::string what;        ///< "very low, end not seen"
    std::string lasted;      ///< "47 min"; empty for a finger-prick
    std::string value;       ///< the lowest or highest: "2.4 mmol/L", "below 2.2 mmol/L"
    Instant value_at;        ///< when that was
    std::string seen_by;     ///< "wear 2", "finger-prick"
};

/// Low and very low stretches and those above 250 mg/dL (13.9 mmol/L), of every wear, raw (safety
/// rule 3), and finger-pricks alike, latest first. A low that holds a very low is told once, as the
/// latter. `unit`: to show.
std::vector<LowOrHigh> lows_and_highs(std::span<const Wear> wears,
                                      std::span<const DiaryEntry> diary, Interval window,
                                      GlucoseUnit unit);

}  // namespace tracewright
