#include "coaching/escalation.hpp"

#include "coaching/ladder_rules.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

namespace tracewright {

const char* name_of(Rung rung) {
    switch (rung) {
        case Rung::emergency_now:
            return "Emergency now";
        case Rung::same_day:
            return "Same day, client and prescriber";
        case Rung::this_week:
            return "This week, prescriber";
    }
    return "This week, prescriber";
}

std::string event_key(const char* kind, Instant at) {
    return fmt::format("{}@{}", kind, at.time_since_epoch().count());
}

std::string event_key(const char* kind, const DiaryEntry& entry) {
    // FNV-1a, 64 bits: the same on every machine and in every version.
    std::uint64_t mark = 14'695'981'039'346'656'037U;
    const std::string says = fmt::format(
        "{}|{}|{}", entry.text, entry.number.value_or(0),
        entry.glucose
            ? fmt::format("{} {}", entry.glucose->hundredths, name_of(entry.glucose->unit))
            : std::string());
    for (const char c : says) {
        mark = (mark ^ static_cast<unsigned char>(c)) * 1'099'511'628'211U;
    }
    return fmt::format("{}={:016x}", event_key(kind, entry.at), mark);
}

bool is_kept_as(const Escalation& arising, const Escalation& kept) {
    return arising.event == kept.event ||
           (arising.event.starts_with(kept.event + "=") && arising.what == kept.what);
}

std::string lows_by_medicine(const LadderInput& input, Instant at) {
    const MedicineRisks risks = input.medicines.risks_at(at);
    if (!risks.answered) {
        return "The medicine list is not fully answered, so it counts as able to cause lows.";
    }
    std::string names;
    for (const MedicineUse& use : input.medicines.uses()) {
        const bool taken = use.may_be_taken_in({at, at + std::chrono::seconds{1}});
        for (const Medicine* medicine : use.text.recognised) {
            if (taken && medicine->causes_lows == CausesLows::yes) {
                names += (names.empty() ? "" : ", ") + medicine->name;
            }
        }
    }
    return names.empty() ? std::string()
                         : "On the list of medicines that can cause lows: " + names + ".";
}

std::vector<Escalation> escalations(const LadderInput& input) {
    std::vector<Escalation> all;
    for (auto* rule : {lows_on_the_ladder, highs_on_the_ladder, diary_on_the_ladder,
                       improvement_on_the_ladder}) {
        for (Escalation& escalation : rule(input)) {
            // The same event seen by two rules or two sensors is one.
            if (std::ranges::none_of(all, [&](const Escalation& other) {
                    return other.event == escalation.event;
                })) {
                all.push_back(std::move(escalation));
            }
        }
    }
    std::ranges::stable_sort(all, [](const Escalation& a, const Escalation& b) {
        return a.rung != b.rung ? a.rung < b.rung : a.at > b.at;
    });
    return all;
}

std::string escalation_sentence(const Escalation& escalation, const ZoneHistory& clock,
                                Instant first_seen, Instant as_of) {
    const bool told_late = first_seen - escalation.at > std::chrono::hours{24};
    std::string seen;
    if (told_late) {
        const bool today = clock.date_at(first_seen) == clock.date_at(as_of);
        seen = today ? ", first seen today"
                     : ", first seen " + day_words(clock.date_at(first_seen), clock.writing());
    }
    return fmt::format("{}, {}{}: {}.",
                       day_and_time(clock.wall_time(escalation.at), clock.writing()),
                       age_words(escalation.at, as_of, clock), seen, escalation.what);
}

}  // namespace tracewright
