#include "coaching/eating_care.hpp"
#include "coaching/gate_rules.hpp"

namespace tracewright {

namespace {

constexpr int of_age = 18;

std::vector<Gate> age_gates(const CareInput& input) {
    const auto& born = input.facts.born_year;
    if (!born) {
        return {{GateKind::may_be_under_18,
                 true,
                 false,
                 {"The year of birth is not known: please ask. Under 18 is not taken on."},
                 {}}};
    }
    const std::chrono::year_month_day today{
        std::chrono::sys_days{input.clock.date_at(input.as_of).time_since_epoch()}};
    const int turns = static_cast<int>(today.year()) - *born;  // in the course of this year
    if (turns > of_age) {
        return {};
    }
    return {{GateKind::may_be_under_18,
             turns == of_age,
             false,
             {turns == of_age ? "The client may still be under 18: please ask. Under 18 is not "
                                "taken on."
                              : "Under 18: not taken on."},
             {}}};
}

std::vector<Gate> pregnancy_gates(const CareInput& input) {
    switch (input.facts.cautions.pregnancy) {
        case Pregnancy::no:
            return {};
        case Pregnancy::not_answered:
            return {{GateKind::pregnancy,
                     true,
                     false,
                     {"Whether the client is pregnant or planning is not answered: please ask."},
                     {}}};
        case Pregnancy::pregnant:
        case Pregnancy::planning:
        case Pregnancy::unsure:
            break;
    }
    return {{GateKind::pregnancy,
             false,
             false,
             {"Pregnant, planning or unsure: no target, plan or trial of ours. The maternity or "
              "diabetes clinic leads."},
             "Your maternity or diabetes clinic leads."}};
}

}  // namespace

std::vector<Gate> gates_for_anything(const CareInput& input) {
    std::vector<Gate> gates = age_gates(input);
    for (Gate& gate : pregnancy_gates(input)) {
        gates.push_back(std::move(gate));
    }
    return gates;
}

std::vector<Gate> gates_for_food(const CareInput& input) {
    const EatingScreen& screen = input.facts.cautions.eating;
    std::vector<Gate> gates;
    if (numbers_turned_down(screen)) {
        gates.push_back({GateKind::eating,
                         screen.positive != Answered::yes,
                         false,
                         {screen.positive == Answered::yes
                              ? "The eating screen was positive: talk first, offer a referral."
                              : "The eating screen is not answered (result, by whom and date)."},
                         {}});
    }
    const auto signs = eating_signs(input);
    if (!signs.empty()) {
        std::string seen;
        for (const EatingSignSeen& sign : signs) {
            seen += (seen.empty() ? "" : "; ") + sign.seen;
        }
        gates.push_back(
            {GateKind::eating_signs,
             false,
             false,
             {"Seen: " + seen + ". Talk first. Don't set a food change. Offer a referral."},
             {}});
    }
    return gates;
}

}  // namespace tracewright
