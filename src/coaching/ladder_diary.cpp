#include "coaching/ladder_rules.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <set>

namespace tracewright {

namespace {

constexpr double emergency_ketones = 3.0;  // mmol/L; from memory
constexpr double high_ketones = 1.5;       // mmol/L; from memory
constexpr std::chrono::hours six_hours{6};
constexpr std::chrono::hours one_day{24};

constexpr std::array emergencies{
    "chest pain", "confused",       "unconscious",    "seizure",           "fitting",
    "passed out", "fast breathing", "deep breathing", "can't keep fluids", "cannot keep fluids"};
// With an SGLT2 inhibitor each of these is an emergency at any glucose.
constexpr std::array ketoacidosis_signs{"nausea",     "nauseous",   "vomit",
                                        "threw up",   "belly pain", "stomach pain",
                                        "tummy pain", "breathless", "short of breath"};
constexpr std::array losing_fluids{"vomit", "threw up", "diarrhoea", "diarrhea"};

std::string small(const std::string& text) {
    std::string result = text;
    std::ranges::transform(result, result.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return result;
}

template <std::size_t Count>
bool speaks_of(const DiaryEntry& entry, const std::array<const char*, Count>& words) {
    const std::string text = small(entry.text);
    return std::ranges::any_of(
        words, [&](const char* word) { return text.find(word) != std::string::npos; });
}

bool is_of_the_body(const DiaryEntry& entry) {
    return entry.kind == DiaryKind::symptom || entry.kind == DiaryKind::illness ||
           entry.kind == DiaryKind::note || entry.kind == DiaryKind::mood;
}

void add_ketones(const DiaryEntry& entry, std::vector<Escalation>& all) {
    const double value = entry.number.value_or(0);
    if (value >= emergency_ketones) {
        all.push_back(
            {Rung::emergency_now, event_key("ketones", entry.at), entry.at,
             fmt::format("blood ketones of {:.1f} mmol/L", value),
             "Emergency number or emergency department now. Local guidance comes first."});
    } else if (value >= high_ketones) {
        all.push_back({Rung::same_day, event_key("ketones", entry.at), entry.at,
                       fmt::format("blood ketones of {:.1f} mmol/L", value),
                       "Tell the client and the prescriber today. Local guidance comes first."});
    }
}

void add_symptoms(const LadderInput& input, const DiaryEntry& entry, std::vector<Escalation>& all) {
    if (speaks_of(entry, emergencies)) {
        all.push_back({Rung::emergency_now, event_key("symptom", entry.at), entry.at,
                       "the diary says '" + entry.text + "'",
                       "If it is so now: emergency number. Else ask today what it was and tell the "
                       "prescriber. Local guidance comes first."});
    } else if (speaks_of(entry, ketoacidosis_signs) && input.medicines.risks_at(entry.at).sglt2) {
        const bool answered = input.medicines.risks_at(entry.at).answered;
        all.push_back(
            {Rung::emergency_now, event_key("symptom_with_sglt2", entry.at), entry.at,
             "the diary says '" + entry.text + "'" +
                 (answered ? ", beside an SGLT2 inhibitor"
                           : ", and the medicine list is not answered, so it counts as holding an "
                             "SGLT2 inhibitor"),
             "With such a medicine this is an emergency at any glucose: if it is so now, emergency "
             "number. Else ask today and tell the prescriber. Local guidance comes first."});
    }
}

void add_illness(const LadderInput& input, std::vector<Escalation>& all) {
    std::set<CivilDate> ill;
    for (const DiaryEntry& entry : input.diary) {
        if (entry.kind == DiaryKind::illness) {
            ill.insert(input.clock.date_at(entry.at));
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
        if (!is_of_the_body(entry) || !speaks_of(entry, losing_fluids)) {
            continue;
        }
        const bool goes_on = first != nullptr && entry.at - first->at <= one_day;
        if (!goes_on) {
            first = &entry;
        }
        const Instant until = entry.until.value_or(entry.at);
        if (until - first->at > six_hours) {
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
        if (is_of_the_body(entry)) {
            add_symptoms(input, entry, all);
        }
    }
    add_illness(input, all);
    add_losing_fluids(input, all);
    return all;
}

}  // namespace tracewright
