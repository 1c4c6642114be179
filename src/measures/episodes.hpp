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

/// The definitions of a year: those of 2023 are the project's; 2017 stays as a named variant, in
/// which a very low episode ends only above 70 mg/dL (3.9 mmol/L; from memory).
enum class EpisodeRules { consensus_2023, consensus_2017 };

/// All episodes in order of start, then kind. Level 1 counts contain level 2 events.
/// Sources: Battelino et al. 2023, 10.1016/S2213-8587(22)00319-9 (end rules from memory); Danne et
/// al. 2017. Durations and the two gap rules are ours: docs/methods.
std::vector<Episode> episodes_of(const TraceView& view,
                                 EpisodeRules rules = EpisodeRules::consensus_2023);

/// Runs below 54 mg/dL (3.0 mmol/L), or LOW, of less than 15 seen minutes that a gap or an end of
/// the data cut short: what was not seen may have been low too, so they lead whatever their length
/// (safety rule 2). Runs within a very low episode are not told again.
std::vector<Episode> cut_short_very_lows(const TraceView& view);

}  // namespace tracewright
