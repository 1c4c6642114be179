#pragma once

#include "trace/trace_view.hpp"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace tracewright {

/// The consensus bands with their one finer edge: exactly 70 mg/dL (3.9 mmol/L) is in range, and by
/// the rules of 2017 no end of a very low episode.
enum class LevelClass : std::uint8_t { very_low, low, at_seventy, in_range, high, very_high };

LevelClass class_of(const Reading& reading);

/// Silence before `reading` by the episode rule: three intervals of the one before it or 20 minutes
/// without any, the larger.
bool silent_between(const Reading& before, const Reading& reading);

/// Neighbouring readings of one class without silence between them.
struct LevelRun {
    LevelClass level = LevelClass::in_range;
    bool silence_before = true;  ///< also of the first run
    std::uint32_t readings = 0;
    Instant from;
    Instant to;                    ///< the last one's moment and the time it stands
    std::chrono::seconds time{0};  ///< seen
    /// The lowest of a run below range, the highest of one above it (LOW and HIGH beyond all
    /// numbers; the first of equals); in range the first.
    Reading extreme;
};

/// A trace by its levels, in order of time; implausible readings are passed over. Far fewer runs
/// than readings.
std::vector<LevelRun> level_runs(const TraceView& view);

/// Whether `a` lies further out than `b`, downwards (`lower`) or upwards.
bool more_extreme(const Reading& a, const Reading& b, bool lower);

}  // namespace tracewright
