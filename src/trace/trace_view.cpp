#include "trace/trace_view.hpp"

#include <algorithm>

namespace tracewright {

TraceView cut(const TraceView& view, Interval window) {
    const Interval kept = intersection(view.window(), window);
    const auto before = [](const Reading& reading, Instant at) { return reading.at < at; };
    auto first = std::lower_bound(view.readings.begin(), view.readings.end(), kept.from, before);
    const auto last = std::lower_bound(first, view.readings.end(), kept.to, before);
    if (first != view.readings.begin()) {
        const auto previous = std::prev(first);
        const Reading* next = first != view.readings.end() ? &*first : nullptr;
        if (previous->at + standing_time(*previous, next) > kept.from) {
            first = previous;
        }
    }
    // The reading after the window says how long the last one within it stands.
    const auto end = last != view.readings.end() && first != last ? std::next(last) : last;
    return {{first, end}, kept.from, kept.to};
}

std::span<const Reading> readings_within(const TraceView& view) {
    const auto before = [](const Reading& reading, Instant at) { return reading.at < at; };
    const auto first =
        std::lower_bound(view.readings.begin(), view.readings.end(), view.from, before);
    const auto last = std::lower_bound(first, view.readings.end(), view.to, before);
    return {first, last};
}

std::chrono::seconds sensed(const TraceView& view) {
    std::chrono::seconds total{0};
    for_each_standing(view, [&](const Reading&, std::chrono::seconds stood) { total += stood; });
    return total;
}

}  // namespace tracewright
