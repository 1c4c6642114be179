#include "coaching/gates.hpp"

#include "coaching/gate_rules.hpp"
#include "coaching/prescriber_answer.hpp"
#include "diary/medicine_text.hpp"
#include "diary/written_words.hpp"

#include <algorithm>

namespace tracewright {

namespace {

bool eats_less(Proposed proposed) {
    return proposed == Proposed::low_carbohydrate || proposed == Proposed::fasting ||
           proposed == Proposed::meal_skipping || proposed == Proposed::weight_loss;
}

bool names_a_medicine(const std::string& words) {
    DiaryEntry entry;
    entry.text = words;
    return !medicine_text(words).recognised.empty() ||
           speaks_of(entry, {"medicine", "medication", "insulin", "tablet", "dose", "injection",
                             "supplement", "vitamin", "capsule"});
}

AskedAbout asked_about(Proposed proposed) {
    switch (proposed) {
        case Proposed::fasting:
        case Proposed::meal_skipping:
            return AskedAbout::fasting;
        case Proposed::weight_loss:
            return AskedAbout::weight_loss;
        case Proposed::walking:
            return AskedAbout::walking;
        case Proposed::low_carbohydrate:
        case Proposed::food_change:
        case Proposed::other:
            break;
    }
    return AskedAbout::low_carbohydrate;
}

void append(std::vector<Gate>& all, std::vector<Gate> more) {
    for (Gate& gate : more) {
        all.push_back(std::move(gate));
    }
}

}  // namespace

std::vector<Gate> gates_before_offer(Proposed proposed, const std::string& words,
                                     const CareInput& input) {
    std::vector<Gate> gates = gates_for_anything(input);
    if (names_a_medicine(words)) {
        gates.push_back({GateKind::names_a_medicine,
                         false,
                         false,
                         {"The words name a medicine or supplement: that is never a change or a "
                          "trial here."},
                         {}});
    }
    if (eats_less(proposed)) {
        append(gates, gates_for_eating_less(input));
    }
    if (eats_less(proposed) || proposed == Proposed::food_change) {
        append(gates, gates_for_food(input));
    }
    if (proposed == Proposed::walking) {
        append(gates, gates_for_walking(input));
    }
    return gates;
}

std::vector<Gate> gates_before_plan(Proposed proposed, const std::string& words,
                                    const CareInput& input) {
    std::vector<Gate> gates = gates_before_offer(proposed, words, input);
    const bool answered = answer_that_holds(input.facts.prescriber_answers, asked_about(proposed),
                                            input.as_of, input.medicines, input.clock) != nullptr;
    std::erase_if(gates, [&](const Gate& gate) { return gate.prescriber_opens && answered; });
    return gates;
}

std::vector<std::string> gates_for_coach(const std::vector<Gate>& gates, Licence licence) {
    std::vector<std::string> lines;
    for (const Gate& gate : gates) {
        lines.push_back(in_scope(gate.for_coach, licence));
    }
    return lines;
}

}  // namespace tracewright
