#pragma once

#include "coaching/client_facts.hpp"
#include "diary/diary_entry.hpp"
#include "diary/medicine_timeline.hpp"
#include "time/zone_history.hpp"
#include "trace/wear.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// When to call whom (docs/safety.md, the ladder). The first two can't be turned off.
enum class Rung : std::uint8_t { emergency_now, same_day, this_week };

/// Something that happened and that someone must hear of.
struct Escalation {
    Rung rung = Rung::this_week;
    /// What makes it the same event when the data are looked at again: its kind and its moment, of
    /// the diary also what it says. An event whose end was not seen becomes another one when more
    /// of it is seen.
    std::string event;
    Instant at;
    std::string what;  ///< "47 min below 54 mg/dL, lowest 43 mg/dL (wear 2)"
    std::string whom;  ///< whom to contact and what to say; never about a dose
};

/// What the ladder reads: everything, before any exclusion (safety rule 3).
struct LadderInput {
    std::span<const Wear> wears;  ///< all of them, raw
    std::span<const DiaryEntry> diary;
    const MedicineTimeline& medicines;
    const ZoneHistory& clock;
    GlucoseUnit unit = GlucoseUnit::mmol_per_l;  ///< to show
    std::optional<Instant> change_agreed;        ///< since when a habit is being changed
    std::span<const LabResult> labs{};           ///< body weights among them
};

/// Whether an event that was kept is this one: events of the diary were once kept without what they
/// say; then the words told of them must be the same.
bool is_kept_as(const Escalation& arising, const Escalation& kept);

/// Every event of the ladder in these data, the highest rung first, then the latest first.
std::vector<Escalation> escalations(const LadderInput& input);

/// "Tue 3 June 02:40, 16 days ago, first seen today: 47 min below ...": an old one shows its own
/// date first (safety rule 6).
std::string escalation_sentence(const Escalation& escalation, const ZoneHistory& clock,
                                Instant first_seen, Instant as_of);

/// "Emergency now", "Same day, client and prescriber", "This week, prescriber".
const char* name_of(Rung rung);

}  // namespace tracewright
