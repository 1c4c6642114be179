#include "coaching/agreed_change.hpp"

#include "coaching/candidate_changes.hpp"
#include "coaching/proposed_in_words.hpp"

#include <algorithm>
#include <array>
#include <span>

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

constexpr std::array eats_less = {Proposed::low_carbohydrate, Proposed::fasting,
                                  Proposed::weight_loss};
constexpr std::array other_food = {Proposed::food_change};
constexpr std::array moves = {Proposed::walking};

// A smaller portion is what this candidate is.
bool is_less_by_its_candidate(const AgreedChange& change) {
    const CandidateChange* candidate = candidate_called(change.candidate);
    return candidate != nullptr && candidate->cause == Cause::meal_carbohydrate;
}

class GatesOfChange {
  public:
    GatesOfChange(const AgreedChange& change, bool with_prescriber, const CareInput& care)
        : change_(change), with_prescriber_(with_prescriber), client_(care) {}

    std::vector<Gate> all() {
        std::string words = change_.words;
        for (const Part& part : parts) {
            words += "; " + change_.*part.words;
        }
        gates_ = of_kind(change_.kind, words);
        const WhatItDoes& does = change_.does;
        const bool asked = asks_what_it_does(change_);
        // Closed for sure before what is closed by a question alone.
        const bool free = change_.kind == Proposed::other || change_.kind == Proposed::food_change;
        if (free && !is_less_by_its_candidate(change_) && limits_eating(words)) {
            close(eats_less,
                  "The words set a limit to food: that counts as eating less whatever is answered "
                  "(safety rules 8, 9 and 12).",
                  false);
        }
        if (does.eating == EatingChange::less) {
            close(eats_less, nullptr);
        } else if (asked && does.eating == EatingChange::not_answered) {
            close(eats_less,
                  "What it does to eating is not answered and counts as eating less, which safety "
                  "rules 8, 9 and 12 close here: nothing, other food but as much, or less?");
        } else if (does.eating == EatingChange::as_much) {
            close(other_food, nullptr);
        }
        if (does.moves == Answered::yes) {
            close(moves, nullptr);
        } else if (asked && does.moves == Answered::not_yet) {
            close(moves,
                  "Whether it moves the body is not answered and counts as yes, which safety rule "
                  "9 closes here.");
        }
        touches_medicine(asked);
        return std::move(gates_);
    }

  private:
    const AgreedChange& change_;
    bool with_prescriber_;
    ClientGates client_;
    std::vector<Gate> gates_;

    std::vector<Gate> of_kind(Proposed kind, const std::string& words) {
        return with_prescriber_ ? client_.before_plan(kind, words)
                                : client_.before_offer(kind, words);
    }

    bool told(GateKind kind) const {
        return std::ranges::find(gates_, kind, &Gate::kind) != gates_.end();
    }

    // What these kinds close besides, behind the sentence that says why.
    void close(std::span<const Proposed> kinds, const char* why, bool not_answered = true) {
        std::vector<Gate> more;
        for (const Proposed kind : kinds) {
            for (Gate& gate : of_kind(kind, {})) {
                if (!told(gate.kind) &&
                    std::ranges::find(more, gate.kind, &Gate::kind) == more.end()) {
                    gate.open_question = gate.open_question || (why != nullptr && not_answered);
                    more.push_back(std::move(gate));
                }
            }
        }
        if (!more.empty() && why != nullptr) {
            gates_.push_back({GateKind::what_it_does, not_answered, false, {why}, {}});
        }
        std::ranges::move(more, std::back_inserter(gates_));
    }

    void touches_medicine(bool asked) {
        if (told(GateKind::names_a_medicine)) {
            return;
        }
        if (change_.does.medicine == Answered::yes) {
            gates_.push_back(
                {GateKind::names_a_medicine,
                 false,
                 false,
                 {"It touches a medicine, its dose or its time: that is never a change "
                  "here (safety rule 9)."},
                 {}});
        } else if (asked && change_.does.medicine == Answered::not_yet) {
            gates_.push_back(
                {GateKind::names_a_medicine,
                 true,
                 false,
                 {"Whether it touches a medicine, its dose or its time is not answered "
                  "and counts as yes, which is never a change here (safety rule 9)."},
                 {}});
        }
    }
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

bool asks_what_it_does(const AgreedChange& change) {
    return change.candidate.empty() &&
           (change.kind == Proposed::other || change.kind == Proposed::food_change);
}

std::vector<Gate> gates_before_agreeing(const AgreedChange& change, bool with_prescriber,
                                        const CareInput& care) {
    return GatesOfChange(change, with_prescriber, care).all();
}

std::vector<Gate> gates_before_printing(const AgreedChange& change, const CareInput& care) {
    auto gates = gates_before_agreeing(change, true, care);
    std::erase_if(gates, [](const Gate& gate) {
        return gate.kind == GateKind::names_a_medicine && gate.open_question;
    });
    return gates;
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
