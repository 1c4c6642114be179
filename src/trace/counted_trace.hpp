#pragma once

#include "trace/wear.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// One reading at a time out of wears that may overlap.
struct CountedTrace {
    /// Where more than one wear had readings: which one was counted and why.
    struct Choice {
        Interval overlap;
        std::size_t counted;                   ///< index into the wears
        std::vector<std::size_t> not_counted;  ///< kept apart, not lost
        std::string why;
    };

    std::vector<Reading> readings;     ///< ascending, distinct moments, one wear at a time
    std::vector<std::size_t> wear_of;  ///< for each reading the wear it came from
    std::vector<Choice> choices;
    Interval window;  ///< first reading to last reading plus its interval, unless asked otherwise

    TraceView view() const { return {readings, window.from, window.to}; }
    /// The wear counted at a moment, else the last one before it; before all the first. Not defined
    /// without a reading.
    std::size_t wear_at(Instant at) const;
};

/// Joins wears into one trace. Where two overlap, the one with more of the overlap sensed is
/// counted; equal, the one reporting more often; equal again, the one that started first. One that
/// a coach chose goes before all that, and `prefer` (an index) before it, wherever it has readings.
/// The total never exceeds the clock. Source of the rule: ours, no source.
CountedTrace counted_trace(std::span<const Wear> wears,
                           std::optional<std::size_t> prefer = std::nullopt);

}  // namespace tracewright
