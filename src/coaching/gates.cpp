#include "coaching/gates.hpp"

#include "coaching/gate_rules.hpp"
#include "coaching/prescriber_answer.hpp"
#include "coaching/proposed_in_words.hpp"
#include "diary/medicine_text.hpp"
#include "diary/written_words.hpp"

#include <algorithm>
#include <iterator>

namespace tracewright {

namespace {

bool eats_less(Proposed proposed) {
    return proposed == Proposed::low_carbohydrate || proposed == Proposed::fasting ||
           proposed == Proposed::meal_skipping || proposed == Proposed::weight_loss;
}

bool names_a_medicine(const std::string& words) {
    if (words.empty()) {
        return false;
    }
    DiaryEntry entry;
    entry.text = words;
    return !medicine_text(words).recognised.empty() || speaks_of_taking(words) ||
           nearly_names_a_medicine(words) ||
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
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

// What closes another of the kinds as well is told once.
void append_new(std::vector<Gate>& all, std::vector<Gate> more) {
    std::erase_if(more, [&](const Gate& gate) {
        return std::ranges::find(all, gate.kind, &Gate::kind) != all.end();
    });
    append(all, std::move(more));
}

// What is proposed: as it was filed, and what the words say besides.
std::vector<Proposed> all_proposed(Proposed filed, const std::string& words) {
    std::vector<Proposed> all = words.empty() ? std::vector<Proposed>{} : proposed_in(words);
    all.insert(all.begin(), filed);
    return all;
}

}  // namespace

const std::vector<Gate>& ClientGates::read_once(Read rule) {
    const auto known = read_.find(rule);
    return known != read_.end() ? known->second : read_.emplace(rule, rule(care_)).first->second;
}

std::vector<Gate> ClientGates::of_kind(Proposed proposed) {
    std::vector<Gate> gates;
    if (eats_less(proposed)) {
        append(gates, read_once(gates_for_eating_less));
    }
    if (eats_less(proposed) || proposed == Proposed::food_change) {
        append(gates, read_once(gates_for_food));
    }
    if (proposed == Proposed::walking) {
        append(gates, read_once(gates_for_walking));
    }
    return gates;
}

std::vector<Gate> ClientGates::of_all_and_words(const std::string& words) {
    std::vector<Gate> gates = read_once(gates_for_anything);
    if (names_a_medicine(words)) {
        gates.push_back(
            {GateKind::names_a_medicine,
             false,
             false,
             {"The words name a medicine or supplement, or how it is taken: that is never "
              "a change or a trial here."},
             {}});
    }
    return gates;
}

std::vector<Gate> ClientGates::before_offer(Proposed proposed, const std::string& words) {
    std::vector<Gate> gates = of_all_and_words(words);
    for (const Proposed one : all_proposed(proposed, words)) {
        append_new(gates, of_kind(one));
    }
    return gates;
}

std::vector<Gate> ClientGates::before_plan(Proposed proposed, const std::string& words) {
    std::vector<Gate> gates;
    const auto add = [&](std::vector<Gate> more, Proposed of) {
        const bool answered =
            answer_that_holds(care_.facts.prescriber_answers, asked_about(of), care_.as_of,
                              care_.medicines, care_.clock) != nullptr;
        std::erase_if(more, [&](const Gate& gate) { return gate.prescriber_opens && answered; });
        append_new(gates, std::move(more));
    };
    add(of_all_and_words(words), proposed);
    for (const Proposed one : all_proposed(proposed, words)) {
        add(of_kind(one), one);
    }
    return gates;
}

std::vector<Gate> gates_before_offer(Proposed proposed, const std::string& words,
                                     const CareInput& input) {
    return ClientGates(input).before_offer(proposed, words);
}

std::vector<Gate> gates_before_plan(Proposed proposed, const std::string& words,
                                    const CareInput& input) {
    return ClientGates(input).before_plan(proposed, words);
}

std::vector<std::string> gates_for_coach(const std::vector<Gate>& gates, Licence licence) {
    std::vector<std::string> lines;
    for (const Gate& gate : gates) {
        lines.push_back(in_scope(gate.for_coach, licence));
    }
    return lines;
}

}  // namespace tracewright
