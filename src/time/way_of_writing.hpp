#pragma once

namespace tracewright {

/// How a practice writes dates and times to be read: "Tue 14 April 2026" and "14:40", or "Tue April
/// 14, 2026" and "2:40 pm". What programs read (ISO 8601) doesn't follow it.
struct WayOfWriting {
    bool month_first = false;
    bool twelve_hours = false;

    bool operator==(const WayOfWriting&) const = default;
};

}  // namespace tracewright
