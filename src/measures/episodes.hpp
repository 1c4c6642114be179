#pragma once

#include "time/instant.hpp"
#include "trace/trace_view.hpp"

#include <vector>

namespace tracewright {

enum class EpisodeKind { low, very_low, extended_low, high, very_high, extended_high };

const char* name_of(EpisodeKind kind);

/// One episode by the consensus definitions of 2023 (glycaemia 2.6).
struct Episode {
    EpisodeKind kind = EpisodeKind::low;
    Instant from;
    Instant to;
    std::chrono::seconds lasted{0};  ///< seen time only: unseen minutes never add
    Reading extreme;                 ///< lowest or highest reading; LOW and HIGH beyond all numbers
    bool start_not_seen = false;
    bool end_not_seen = false;
    bool single_reading = false;
};

/// All episodes in order of start, then kind. Level 1 counts contain level 2 events.
/// Sources: Battelino et al. 2023, 10.1016/S2213-8587(22)00319-9 (end rules from memory); Danne et
/// al. 2017. Durations and the two gap rules are ours: docs/methods.
std::vector<Episode> episodes_of(const TraceView& view);

/// Stretches below 54 mg/dL (3.0 mmol/L), or LOW, that a gap or the end of data cut short before 15
/// minutes were seen: 'end not seen' leads whatever its length (safety rule 2).
std::vector<Episode> cut_short_very_lows(const TraceView& view);

}  // namespace tracewright
