#pragma once

#include "coaching/care_to_tell.hpp"
#include "coaching/client_facts.hpp"
#include "coaching/client_review.hpp"
#include "coaching/closed_since.hpp"
#include "coaching/kept_trial.hpp"
#include "diary/diary_entry.hpp"
#include "time/zone_history.hpp"
#include "trace/wear.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Why a client needs the coach, the strongest first. What is unsafe can't be outranked (safety
/// rule 2).
enum class NeedKind : std::uint8_t {
    unsafe,    ///< an escalation that is not acknowledged
    to_tell,   ///< what the clinic or prescriber is to be told, and has not answered
    promised,  ///< something promised, due today or before
    due,       ///< a check between wears (due_checks.hpp), or the end of consent
    ending,    ///< a wear ends within two days, or ended and was not reviewed since
    stuck,     ///< a wear is on and nothing came for a day; or who was seen last is forgotten
    nothing_due
};
const char* name_of(NeedKind kind);

/// One reason in a sentence with the fact, and what to do next.
struct Need {
    NeedKind kind = NeedKind::nothing_due;
    int within = 0;    ///< order among needs of one kind: the rung of the ladder, else 0
    Instant by;        ///< when it happened or falls due
    std::string why;   ///< "Tue 3 March 02:40, 6 days ago: 47 min below 54 mg/dL"
    std::string next;  ///< one action
};

struct OpenPromise {
    CivilDate due;
    std::string text;
};

/// How far back the list looks into wears and diary.
inline constexpr std::chrono::days caseload_span{30};
/// From the start of a day of the client's, so that it holds the same at every moment of one day.
Interval caseload_window(const ZoneHistory& clock, Instant as_of);

/// What the list looks at of one client. Wears and diary need hold `caseload_window` only.
struct CaseloadClient {
    std::string handle;
    std::string name;
    ClientFacts facts;
    std::vector<Wear> wears;
    Diary diary;
    std::vector<StandingEscalation> escalations;
    std::vector<OpenPromise> promises;  ///< not kept yet
    std::optional<Instant> last_review;
    std::optional<Instant> last_reading;  ///< of all time
    std::vector<KeptTrial> trials = {};
    std::optional<Instant> last_trial_read = {};
    std::vector<CareToTell> to_tell = {};  ///< of the days that a review without a window shows
    std::optional<Instant> brought_in_at = {};  ///< when readings last came
    /// Of the day of the look, where it was read already; else it is read of what stands here.
    std::optional<ClosedSince> closed_since = {};
};

/// When the wear was to end; 14 days after its start where nothing was told (common practice, no
/// source).
Instant planned_end_of(const Wear& wear);
/// A sensor that was not said to have come off counts as worn until its planned end.
bool wear_is_on(const Wear& wear, Instant as_of);

/// On which of the last seven days, oldest first, a reading and an entry of the diary came.
struct SeenAndWritten {
    std::vector<bool> seen;
    std::vector<bool> written;
};

struct CaseloadLine {
    std::string handle;
    std::string name;
    std::vector<Need> needs;  ///< strongest first; one of `nothing_due` where there is none
    SeenAndWritten week;
    const Need& first() const { return needs.front(); }
};

/// All clients in the order in which they need the coach: by kind; unsafe by rung of the ladder and
/// then the latest first, all else by what is due longest; ties by handle, so that everyone sees
/// the same order. 'Nothing due' is said only where data are younger than 24 h or no wear is
/// planned (safety rule 6). Ours, no source for the order: docs/methods/caseload.md.
std::vector<CaseloadLine> caseload(std::span<const CaseloadClient> clients, Instant as_of);

}  // namespace tracewright
