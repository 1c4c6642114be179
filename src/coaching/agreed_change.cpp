#include "coaching/agreed_change.hpp"

#include <array>

namespace tracewright {

namespace {

struct Part {
    const char* name;
    std::string AgreedChange::*words;
};
constexpr std::array parts = {
    Part{"when", &AgreedChange::when},
    Part{"where", &AgreedChange::where},
    Part{"how often", &AgreedChange::how_often},
    Part{"if not", &AgreedChange::if_not},
    Part{"how checked", &AgreedChange::how_checked},
    Part{"stop when", &AgreedChange::stop_when},
};

}  // namespace

std::vector<std::string> lacking(const AgreedChange& change) {
    std::vector<std::string> missing;
    if (change.words.empty()) {
        missing.emplace_back("what");
    }
    for (const Part& part : parts) {
        if ((change.*part.words).empty()) {
            missing.emplace_back(part.name);
        }
    }
    if (!change.check_on) {
        missing.emplace_back("check on");
    }
    return missing;
}

std::vector<Gate> gates_before_agreeing(const AgreedChange& change, bool with_prescriber,
                                        const CareInput& care) {
    std::string words = change.words;
    for (const Part& part : parts) {
        // How it is checked and when it is stopped may well name a medicine.
        if (part.words != &AgreedChange::how_checked && part.words != &AgreedChange::stop_when) {
            words += "; " + change.*part.words;
        }
    }
    return with_prescriber ? gates_before_plan(change.kind, words, care)
                           : gates_before_offer(change.kind, words, care);
}

std::vector<Gate> gates_since_agreed(const CareInput& care) {
    if (!care.facts.agreed_change) {
        return {};
    }
    auto gates = gates_before_agreeing(*care.facts.agreed_change, true, care);
    std::erase_if(gates, [](const Gate& gate) { return gate.open_question; });
    return gates;
}

bool goes_on_as_agreed(const CareInput& care) {
    const auto& agreed = care.facts.agreed_change;
    return agreed && agreed->outcome == ChangeOutcome::open && gates_since_agreed(care).empty();
}

bool end_agreed_change(ClientFacts& facts, ChangeOutcome outcome, CivilDate on) {
    if (!facts.agreed_change || outcome == ChangeOutcome::open) {
        return false;
    }
    AgreedChange ended = std::move(*facts.agreed_change);
    facts.agreed_change.reset();
    ended.outcome = outcome;
    ended.ended_on = on;
    facts.earlier_changes.push_back(std::move(ended));
    return true;
}

const char* name_of(ChangeOutcome outcome) {
    constexpr std::array names = {"open", "kept", "dropped", "changed"};
    return names.at(static_cast<std::size_t>(outcome));
}

std::string change_words(const AgreedChange& change) {
    std::string text = change.words;
    for (const Part& part : parts) {
        if (!(change.*part.words).empty()) {
            text += "; " + std::string(part.name) + ": " + change.*part.words;
        }
    }
    return text;
}

}  // namespace tracewright
