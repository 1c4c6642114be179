#include "coaching/ladder_rules.hpp"
#include "diary/alarm_words.hpp"
#include "diary/told_duration.hpp"
#include "diary/written_words.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace tracewright {

namespace {

constexpr double emergency_ketones = 3.0;  // mmol/L; from memory
constexpr double high_ketones = 1.5;       // mmol/L; from memory
constexpr std::chrono::hours six_hours{6};
constexpr std::chrono::hours one_day{24};

// How long it had lasted when it was written, by the words.
std::chrono::minutes told_to_have_lasted(const LadderInput& input, const DiaryEntry& entry) {
    return told_duration(entry.text, input.clock.wall_time(entry.at))
        .value_or(std::chrono::minutes{0});
}

bool is_drowsy(const DiaryEntry& entry) {
    return speaks_of(entry, {"drowsy", "drowsiness", "hard to wake", "won't wake", "can't wake"});
}

void add_ketones(const DiaryEntry& entry, std::vector<Escalation>& all) {
    const double value = entry.number.value_or(0);
    if (value >= emergency_ketones) {
        all.push_back(
            {Rung::emergency_now, event_key("ketones", entry), entry.at,
             fmt::format("blood ketones of {:.1f} mmol/L", value),
             "Emergency number or emergency department now. Local guidance comes first."});
    } else if (value >= high_ketones) {
        all.push_back({Rung::same_day, event_key("ketones", entry), entry.at,
                       fmt::format("blood ketones of {:.1f} mmol/L", value),
                       "Tell the client and the prescriber today. Local guidance comes first."});
    }
}

void add_symptoms(const LadderInput& input, const DiaryEntry& entry, std::vector<Escalation>& all) {
    if (tells_an_emergency(entry)) {
        all.push_back({Rung::emergency_now, event_key("symptom", entry), entry.at,
                       "the diary says '" + entry.text + "'",
                       "If it is so now: emergency number. Else ask today what it was and tell the "
                       "prescriber. Local guidance comes first."});
    } else if (tells_a_ketoacidosis_sign(entry) && input.medicines.risks_at(entry.at).sglt2) {
        const bool answered = input.medicines.risks_at(entry.at).answered;
        all.push_back(
            {Rung::emergency_now, event_key("symptom_with_sglt2", entry), entry.at,
             "the diary says '" + entry.text + "'" +
                 (answered ? ", beside an SGLT2 inhibitor"
                           : ", and the medicine list is not answered, so it counts as holding an "
                             "SGLT2 inhibitor"),
             "With such a medicine this is an emergency at any glucose: if it is so now, emergency "
             "number. Else ask today and tell the prescriber. Local guidance comes first."});
    }
}

bool very_high_near(const LadderInput& input, Instant at) {
    const auto near = [&](Instant other) { return std::chrono::abs(other - at) <= six_hours; };
    for (const Wear& wear : input.wears) {
        for (const Reading& reading : wear.readings) {
            if (near(reading.at) && band_of(reading) == Band::very_high) {
                return true;
            }
        }
    }
    return std::ranges::any_of(input.diary, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::finger_prick && entry.glucose && near(entry.at) &&
               band_of(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}}) ==
                   Band::very_high;
    });
}

void add_drowsy_and_very_high(const LadderInput& input, const DiaryEntry& entry,
                              std::vector<Escalation>& all) {
    if (is_drowsy(entry) && very_high_near(input, entry.at)) {
        all.push_back({Rung::emergency_now, event_key("drowsy_and_very_high", entry), entry.at,
                       "the diary says '" + entry.text + "' with glucose very high",
                       "If it is so now: emergency number. Else ask today what it was and tell the "
                       "prescriber. Local guidance comes first."});
    }
}

// "flu for three days" is of its day and the two before, whatever of these was written then. A
// night of fever is not two days: hours count as days when they come to more than one.
std::chrono::days days_ill_before(const LadderInput& input, const DiaryEntry& entry) {
    constexpr std::chrono::days most{60};
    const bool told = entry.kind == DiaryKind::illness ||
                      (tells_how_they_are(entry) && tells_of_being_ill(entry));
    const auto days = std::chrono::ceil<std::chrono::days>(told ? told_to_have_lasted(input, entry)
                                                                : std::chrono::minutes{0});
    return std::clamp(days - std::chrono::days{1}, std::chrono::days{0}, most);
}

void add_illness(const LadderInput& input, std::vector<Escalation>& all) {
    std::set<CivilDate> ill;
    for (const DiaryEntry& entry : input.diary) {
        const std::chrono::days before = days_ill_before(input, entry);
        if (entry.kind == DiaryKind::illness || before > std::chrono::days{0}) {
            const CivilDate last = input.clock.date_at(entry.until.value_or(entry.at));
            for (CivilDate day = input.clock.date_at(entry.at) - before; day <= last;
                 day += std::chrono::days{1}) {
                ill.insert(day);
            }
        }
    }
    for (const CivilDate day : ill) {
        const bool second = ill.contains(day - std::chrono::days{1});
        if (second && !ill.contains(day - std::chrono::days{2})) {
            const Instant at = input.clock.day_of(day).from;
            all.push_back(
                {Rung::same_day, event_key("ill_two_days", at), at,
                 "ill two days or more by the diary",
                 "Tell the client and the prescriber today. Local guidance comes first."});
        }
    }
}

void add_losing_fluids(const LadderInput& input, std::vector<Escalation>& all) {
    const DiaryEntry* first = nullptr;
    for (const DiaryEntry& entry : input.diary) {
        if (!tells_losing_fluids(entry)) {  // whatever it was filed under
            continue;
        }
        const bool goes_on = first != nullptr && entry.at - first->at <= one_day;
        if (!goes_on) {
            first = &entry;
        }
        const Instant until = entry.until.value_or(entry.at);
        if (until - first->at > six_hours || told_to_have_lasted(input, entry) > six_hours) {
            all.push_back({Rung::same_day, event_key("losing_fluids", first->at), first->at,
                           "vomiting or diarrhoea for more than 6 hours by the diary",
                           "Tell the client and the prescriber today; unable to keep fluids down: "
                           "emergency now. Local guidance comes first."});
        }
    }
}

}  // namespace

std::vector<Escalation> diary_on_the_ladder(const LadderInput& input) {
    std::vector<Escalation> all;
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::ketones) {
            add_ketones(entry, all);
        }
        add_symptoms(input, entry, all);  // whatever it was filed under
        if (tells_how_they_are(entry)) {
            add_drowsy_and_very_high(input, entry, all);
        }
    }
    add_illness(input, all);
    add_losing_fluids(input, all);
    return all;
}

}  // namespace tracewright
