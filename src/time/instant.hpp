#pragma once

#include <chrono>
#include <cstdint>

namespace tracewright {

/// A moment, UTC, whole seconds.
using Instant = std::chrono::sys_seconds;

/// What a wall clock shows: not a moment until a zone says so.
using WallTime = std::chrono::local_seconds;

/// A calendar date on a wall.
using CivilDate = std::chrono::local_days;

/// [from, to).
struct Interval {
    Instant from;
    Instant to;

    std::chrono::seconds length() const { return to - from; }
    bool contains(Instant at) const { return from <= at && at < to; }
    bool operator==(const Interval&) const = default;
};

/// The part the two share; an empty interval at the later start if they share none.
inline Interval intersection(const Interval& a, const Interval& b) {
    const Instant from = a.from > b.from ? a.from : b.from;
    const Instant to = a.to < b.to ? a.to : b.to;
    return {from, to < from ? from : to};
}

}  // namespace tracewright
