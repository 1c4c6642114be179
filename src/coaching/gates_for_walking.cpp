#include "coaching/gate_rules.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::days looked_at{28};  // whole days, and today so far; our own rule
constexpr std::chrono::days eye_check_holds{365};

void add_asked(std::vector<Gate>& gates, GateKind kind, Answered answer, const char* if_yes,
               const char* if_open) {
    if (answer != Answered::no) {
        const bool open = answer == Answered::not_yet;
        gates.push_back({kind, open, !open, {open ? if_open : if_yes}, {}});
    }
}

bool low_seen_or_not_looked(const CareInput& input) {
    const CivilDate first = input.clock.date_at(input.as_of) - looked_at;
    const Interval window{input.clock.day_of(first).from, input.as_of};
    bool seen_any = false;
    for (const Wear& wear : input.wears) {
        if (wear.empty() || intersection(wear.sensed_span(), window).length().count() == 0) {
            continue;
        }
        seen_any = true;
        for (const Episode& episode : episodes_of(wear.view())) {
            if (window.contains(episode.from) &&
                (episode.kind == EpisodeKind::low || episode.kind == EpisodeKind::very_low)) {
                return true;
            }
        }
        const bool cut_short = std::ranges::any_of(
            cut_short_very_lows(wear.view()),
            [&](const Episode& episode) { return window.contains(episode.from); });
        if (cut_short) {
            return true;
        }
    }
    const bool pricked = std::ranges::any_of(input.diary, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::finger_prick && entry.glucose &&
               window.contains(entry.at) &&
               band_of(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}}) < Band::in_range;
    });
    return pricked || !seen_any;
}

void add_medicines(const CareInput& input, std::vector<Gate>& gates) {
    const MedicineRisks risks = input.medicines.risks_at(input.as_of);
    const bool can = risks.insulin || risks.secretagogue;
    const bool severe = input.facts.cautions.severe_low_before != Answered::no;
    if (can && (severe || low_seen_or_not_looked(input))) {
        gates.push_back({GateKind::lows_with_medicine,
                         !risks.answered,
                         true,
                         {"Lows were seen, or can't be ruled out, with medicines that can cause "
                          "them (or a list not answered)."},
                         {}});
    }
    if (risks.beta_blocker || !risks.answered) {
        gates.push_back(
            {GateKind::beta_blocker,
             !risks.answered,
             true,
             {risks.answered ? "A beta-blocker is on the list."
                             : "The list of medicines is not answered and may hold a beta-blocker.",
              "It hides the tremor and fast pulse of a low."},
             {}});
    }
}

}  // namespace

std::vector<Gate> eye_gates(const CareInput& input) {
    const Cautions& cautions = input.facts.cautions;
    const CivilDate today = input.clock.date_at(input.as_of);
    std::vector<Gate> gates;
    add_asked(gates, GateKind::eyes, cautions.eye_disease, "Eye disease is on record.",
              "Eye disease is not answered: please ask.");
    if (gates.empty() &&
        (!cautions.last_eye_check || today - *cautions.last_eye_check > eye_check_holds)) {
        gates.push_back({GateKind::eyes,
                         !cautions.last_eye_check,
                         cautions.last_eye_check.has_value(),
                         {cautions.last_eye_check
                              ? "The last eye check was on " +
                                    full_date(*cautions.last_eye_check, input.clock.writing()) +
                                    ", more than 12 months ago: the clinic before a change "
                                    "expected to lower A1c fast."
                              : "When the eyes were checked last is not answered: please ask."},
                         {}});
    }
    return gates;
}

std::vector<Gate> gates_for_walking(const CareInput& input) {
    const Cautions& cautions = input.facts.cautions;
    std::vector<Gate> gates;
    add_medicines(input, gates);
    add_asked(gates, GateKind::feet, cautions.numb_feet_or_wound,
              "Numb feet or a foot wound is on record.",
              "Numb feet or a foot wound is not answered: please ask.");
    add_asked(gates, GateKind::eyes, cautions.eye_disease, "Eye disease or treatment is on record.",
              "Eye disease is not answered: please ask.");
    add_asked(gates, GateKind::chest, cautions.chest_symptoms, "Chest symptoms are on record.",
              "Chest symptoms are not answered: please ask.");
    return gates;
}

}  // namespace tracewright
