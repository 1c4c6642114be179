#pragma once

#include "coaching/proposed.hpp"
#include "findings/published_effects.hpp"
#include "findings/question_words.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What makes a change hard to keep. One of them: some effort; two or three: much; none: little.
/// Ours, no source.
struct EffortSigns {
    bool takes_time = false;      ///< over ten minutes more of the day
    bool touches_others = false;  ///< who cook or eat with the client
    bool rearranges_day = false;  ///< work, evening or bedtime
};
enum class Effort { little, some, much };
Effort effort_of(const EffortSigns& signs);
const char* name_of(Effort effort);
/// "some: it takes over ten minutes of the day".
std::string effort_words(const EffortSigns& signs);

/// A change that a coach may talk about with a client. Medicines and supplements are never among
/// them (safety rule 9).
struct CandidateChange {
    const char* code;            ///< on the command line and in JSON
    const char* words;           ///< what the client would do
    std::optional<Cause> cause;  ///< empty: no diary shows it, only a trial can
    bool less_of_it = false;     ///< the change lowers the cause's value
    Outcome outcome{};           ///< from whose stretch the hours are worked out
    Proposed proposed{};
    EffortSigns effort;
    const char* trial = "";         ///< code of the template that asks it; empty: none is ready
    const char* others_habit = "";  ///< without a cause: how rows of published effects begin
};

std::span<const CandidateChange> candidate_changes();
/// Null if there is none of this code.
const CandidateChange* candidate_called(std::string_view code);

/// What was found in other people about a candidate, and what may be made of it.
struct OthersOfCandidate {
    std::vector<PublishedEffect> rows;  ///< with the comparator that the candidate has
    bool conflict = false;              ///< rows that point to different sides: none is used
    /// Of one `change` of the cause, in mg/dL or hours: half the effect, as wide as the larger of
    /// the effect and two standard errors.
    std::optional<NormalTelling> prior;
};

/// The client's own rises, which turn a ratio or a standardised difference into mg/dL.
struct OwnScale {
    double mean = 0;
    double sd = 0;
};

/// Rows of another comparator are left out: "vs starch first" is not how people eat, a walk against
/// another walk is not against sitting. A ratio is taken of the client's own mean rise, a
/// standardised difference of the spread of those rises (ours, no source). Never shown as the
/// client's result.
OthersOfCandidate others_of(const CandidateChange& candidate, const OwnScale& own);

}  // namespace tracewright
