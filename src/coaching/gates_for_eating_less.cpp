#include "coaching/gate_rules.hpp"
#include "coaching/type_signs.hpp"

namespace tracewright {

namespace {

constexpr const char* ring_the_clinic =
    "If you are ill, vomiting or can't eat, ring your clinic today, even when your glucose looks "
    "normal.";

void add_type(const CareInput& input, std::vector<Gate>& gates) {
    const auto signs = type_signs(input);
    if (signs.empty() || type_was_checked(input, signs)) {
        return;
    }
    gates.push_back({GateKind::type_to_be_checked,
                     signs.size() == 1 && signs.front().sign == TypeSign::type_not_told,
                     false,
                     {type_signs_for_coach(signs)},
                     type_signs_for_client(signs)});
}

void add_medicines(const CareInput& input, std::vector<Gate>& gates) {
    const MedicineRisks risks = input.medicines.risks_at(input.as_of);
    if (!risks.answered) {
        std::string ask =
            "The list of medicines is not answered and counts as insulin, "
            "sulfonylurea and SGLT2 inhibitor.";
        for (const std::string& one : risks.to_ask) {
            ask += " " + one;
        }
        gates.push_back(
            {GateKind::medicines_not_answered, true, false, {std::move(ask)}, ring_the_clinic});
        return;
    }
    if (risks.insulin) {
        gates.push_back({GateKind::insulin,
                         false,
                         true,
                         {"Insulin is on the list.",
                          "Less carbohydrate or food beside it brings lows: the prescriber looks "
                          "at it first."},
                         {}});
    }
    if (risks.secretagogue) {
        gates.push_back({GateKind::secretagogue,
                         false,
                         true,
                         {"A sulfonylurea or glinide is on the list.",
                          "Less carbohydrate or food beside it brings lows: the prescriber looks "
                          "at it first."},
                         {}});
    }
    if (risks.sglt2) {
        gates.push_back({GateKind::sglt2,
                         false,
                         true,
                         {"An SGLT2 inhibitor is on the list.",
                          "Very little carbohydrate, fasting or illness beside it can bring "
                          "ketoacidosis with glucose in range: the prescriber looks at it first."},
                         ring_the_clinic});
    }
}

void add_frailty(const CareInput& input, std::vector<Gate>& gates) {
    if (input.facts.cautions.frail != Answered::no) {
        const bool asked = input.facts.cautions.frail == Answered::yes;
        gates.push_back({GateKind::frail,
                         !asked,
                         false,
                         {asked ? "The client is frail." : "Frailty is not answered: please ask."},
                         {}});
    }
}

}  // namespace

std::vector<Gate> gates_for_eating_less(const CareInput& input) {
    std::vector<Gate> gates;
    add_type(input, gates);
    add_medicines(input, gates);
    add_frailty(input, gates);
    for (Gate& gate : eye_gates(input)) {
        gates.push_back(std::move(gate));
    }
    return gates;
}

}  // namespace tracewright
