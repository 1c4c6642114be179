#pragma once

#include "time/instant.hpp"
#include "trace/reading.hpp"

#include <span>

namespace tracewright {

/// A stretch of one counted trace: readings in ascending order of time, no two at one moment, over
/// the window [from, to). The first reading may lie before `from` if it still stands there, and
/// one may follow `to` that says how long the last one stands: measures that count readings and not
/// time take `readings_within`. Whoever makes one has checked this: the rooms that measure do not
/// check again.
struct TraceView {
    std::span<const Reading> readings;
    Instant from;
    Instant to;

    Interval window() const { return {from, to}; }
};

/// How long a reading stands: until the next one if that follows within one and a half of its
/// sensor's intervals, else for one interval; the last for one. (Architecture rule 3; the one and a
/// half is ours: common practice, no source.)
inline std::chrono::seconds standing_time(const Reading& reading, const Reading* next) {
    const std::chrono::seconds interval = reading.interval();
    if (next == nullptr) {
        return interval;
    }
    const std::chrono::seconds until_next = next->at - reading.at;
    return 2 * until_next > 3 * interval ? interval : until_next;
}

/// The part of `view` within `window`, with its neighbours as told at TraceView.
TraceView cut(const TraceView& view, Interval window);

/// The readings whose own moment lies in the view's window.
std::span<const Reading> readings_within(const TraceView& view);

/// Calls `visit(reading, stood)` for each reading with the part of its standing time that lies in
/// the view's window, in order. Parts of zero seconds and implausible readings are passed over.
/// The parts add up over any partition of the window into views: nothing is counted twice or lost.
template <typename Visit>
void for_each_standing(const TraceView& view, Visit visit) {
    const std::size_t count = view.readings.size();
    for (std::size_t i = 0; i < count; ++i) {
        const Reading& reading = view.readings[i];
        const Reading* next = i + 1 < count ? &view.readings[i + 1] : nullptr;
        const Interval stands =
            intersection({reading.at, reading.at + standing_time(reading, next)}, view.window());
        if (stands.from < stands.to && !reading.implausible()) {
            visit(reading, stands.length());
        }
    }
}

/// Time sensed within the view.
std::chrono::seconds sensed(const TraceView& view);

}  // namespace tracewright
