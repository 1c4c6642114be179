#include "findings/finger_prick_words.hpp"

#include "diary/finger_prick.hpp"
#include "findings/wording.hpp"

namespace tracewright {

std::string finger_prick_level(const DiaryEntry& entry, GlucoseUnit unit) {
    if (!entry.glucose) {
        return {};
    }
    std::string level = glucose_words(entry.glucose->in(unit), unit);
    switch (meter_limit(entry)) {
        case MeterLimit::shows_low:
            return "LO, below what the meter can show";
        case MeterLimit::shows_high:
            return "HI, above what the meter can show";
        case MeterLimit::below_level:
            return "below " + level;
        case MeterLimit::above_level:
            return "above " + level;
        case MeterLimit::none:
            break;
    }
    return level;
}

std::string finger_prick_words(const DiaryEntry& entry, GlucoseUnit unit) {
    const MeterLimit limit = meter_limit(entry);
    const bool shown = limit == MeterLimit::shows_low || limit == MeterLimit::shows_high;
    const bool bound = limit == MeterLimit::below_level || limit == MeterLimit::above_level;
    return std::string("a finger-prick ") +
           (shown   ? "that showed "
            : bound ? ""
                    : "of ") +
           finger_prick_level(entry, unit);
}

}  // namespace tracewright
