#include "measures/shown_range.hpp"

#include "measures/time_in_bands.hpp"

namespace tracewright {

ShownRange shown_range(const Goals& goals) {
    return goals.kind == GoalKind::pregnancy ? ShownRange{63, 140} : ShownRange{};
}

TimeByRange& TimeByRange::operator+=(const TimeByRange& other) {
    very_low += other.very_low;
    low += other.low;
    in_range += other.in_range;
    high += other.high;
    very_high += other.very_high;
    return *this;
}

TimeByRange time_by_range(const TraceView& view, const ShownRange& range) {
    TimeByRange time;
    for_each_standing(view, [&](const Reading& reading, std::chrono::seconds stood) {
        const Band band = band_of(reading);
        if (band == Band::very_low) {
            time.very_low += stood;
        } else if (!range.in_pregnancy()) {
            (band == Band::low        ? time.low
             : band == Band::in_range ? time.in_range
             : band == Band::high     ? time.high
                                      : time.very_high) += stood;
        } else if (in_pregnancy_range(reading)) {
            time.in_range += stood;
        } else {
            // Outside 63 to 140 and not very low: low below 63, which lies within the low band.
            (band == Band::low ? time.low : time.high) += stood;
        }
    });
    return time;
}

}  // namespace tracewright
