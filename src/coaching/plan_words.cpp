#include "coaching/plan_words.hpp"

#include "coaching/trial_templates.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

std::string time_words(double hours, int step = 5) {
    return hours_and_minutes(std::chrono::minutes{std::lround(std::abs(hours) * 60 / step) * step});
}

// Steps of 5 minutes, or to the minute where they would hide that an interval reaches beyond what
// one is said to be sure of.
int step_of(const std::array<double, 2>& hours95) {
    constexpr double narrow = 0.25;
    return std::abs(hours95[1] - hours95[0]) < narrow ? 1 : 5;
}

bool next_to_nothing(double hours) {
    return std::abs(hours) * 60 < 2.5;
}

std::string gain_words(double hours, int step) {
    return next_to_nothing(hours) ? "nothing"
                                  : time_words(hours, step) + (hours > 0 ? " more" : " less");
}

// These days' readings alone are moved: where none comes near the edge of the range, the arithmetic
// gives nothing either way, which is no knowledge of other days (safety rule 5).
std::string expected_words(const RankedCandidate& candidate, double worth) {
    if (std::ranges::all_of(candidate.hours95, next_to_nothing)) {
        return "Expected: under 5 min in range a day either way, because no reading it would move "
               "lies near the edge of the range; other days may differ.";
    }
    const int step = step_of(candidate.hours95);
    const std::string low = gain_words(candidate.hours95[0], step);
    const std::string high = gain_words(candidate.hours95[1], step);
    const std::string gain =
        low == high ? "about " + low + " in range a day on these days; others may differ"
                    : fmt::format("{} in range a day (95 % from {} to {})",
                                  gain_words(candidate.hours, step), low, high);
    return fmt::format("Expected: {}; {:.0f} % sure of {} or more.", gain,
                       100 * candidate.probability, time_words(worth));
}

std::string rows_words(const RankedCandidate& candidate) {
    const OutcomeFacts& facts = facts_of(candidate.change->outcome);
    const std::string what = facts.of == OutcomeOf::night ? "nights"
                             : facts.of == OutcomeOf::day ? "days"
                                                          : std::string(name_of(*facts.slot)) + "s";
    return fmt::format("{} of {} {} had room for it", candidate.days_touched, candidate.days_read,
                       what == "lunchs" ? "lunches" : what);
}

bool seen_on_both_kinds_of_day(const RankedCandidate& candidate) {
    return candidate.own && candidate.own->result.gate == DriverGate::open;
}

std::string find_out_words(const RankedCandidate& candidate) {
    const CandidateChange& change = *candidate.change;
    if (*change.trial != '\0') {
        return fmt::format("Find out first: a trial would tell ('{}').",
                           trial_template_called(change.trial)->question);
    }
    if (!seen_on_both_kinds_of_day(candidate)) {
        return "Find out first: note it on both kinds of day in the next wear.";
    }
    const std::string& next = candidate.own->finding.next.sentence;
    return "Find out first whether it is worth it" +
           (next.empty() ? std::string(": look again after the next wear.") : ". " + next);
}

}  // namespace

std::string opens(const Gate& gate) {
    if (gate.kind == GateKind::what_it_does) {
        return gate.open_question ? "Answer it first." : "";
    }
    if (gate.open_question) {
        return gate.kind == GateKind::names_a_medicine ? "Answer it first." : "Ask first.";
    }
    if (gate.kind == GateKind::pregnancy) {
        return "Write to the prescriber now, so that they know and the clinic leads. Nothing opens "
               "it here.";
    }
    return gate.prescriber_opens
               ? "A letter to the prescriber is the next step: an answer on record opens a plan "
                 "made with them."
               : "";
}

bool calls_for_letter(const Gate& gate) {
    return !gate.open_question && (gate.prescriber_opens || gate.kind == GateKind::pregnancy);
}

std::vector<std::string> cautions_of(const CandidateChange& change, const CareInput& care) {
    std::vector<std::string> cautions;
    const MedicineRisks risks = care.medicines.risks_at(care.as_of);
    const bool lows = risks.insulin || risks.secretagogue || !risks.answered;
    if (lows) {
        cautions.emplace_back(
            "The medicines can cause lows, or the list is not answered: less glucose is itself a "
            "reason to write to the prescriber before the change starts.");
    }
    if (change.proposed == Proposed::walking) {
        cautions.emplace_back("Stop at once with pain in the chest, breathlessness or dizziness.");
        if (lows) {
            cautions.emplace_back("Fast sugar goes along on every walk.");
        }
    }
    if (change.proposed == Proposed::food_change && (risks.sglt2 || !risks.answered)) {
        cautions.emplace_back(
            "Never below 130 g of carbohydrate a day and never over 12 hours without food beside "
            "an SGLT2 inhibitor.");
    }
    return cautions;
}

std::vector<std::string> sentences_of(const RankedCandidate& candidate, double worth) {
    const CandidateChange& change = *candidate.change;
    std::vector<std::string> said;
    if (candidate.both && change.cause) {
        said.push_back(expected_words(candidate, worth) + " " + rows_words(candidate) + ".");
    } else {
        said.emplace_back("How much it may bring can't be told from these days.");
    }
    if (candidate.own) {
        said.push_back("This client's own days: " + candidate.own->finding.sentence);
    } else {
        said.emplace_back(
            "This client's own days say nothing of it yet: it was not noted, or never different.");
    }
    if (!candidate.others.rows.empty()) {
        std::string others = "In other people, apart from that: ";
        for (const PublishedEffect& row : candidate.others.rows) {
            others += (&row == &candidate.others.rows.front() ? "" : "; ") + row.sentence();
        }
        said.push_back(
            others + (candidate.others.conflict ? ". They point to different sides: none of them "
                                                  "is counted in."
                      : candidate.others.prior  ? ". Counted in at half that size and held loosely."
                                                : ". Measured otherwise, so not counted in."));
    }
    said.push_back(fmt::format("Effort: {}.", effort_words(change.effort)));
    switch (candidate.says) {
        case CandidateSays::worth_agreeing:
            said.emplace_back("Worth agreeing on, if the client wants it.");
            break;
        case CandidateSays::find_out_first:
            said.push_back(find_out_words(candidate));
            break;
        case CandidateSays::not_worth_it:
            said.emplace_back("Not worth a change by these days.");
            break;
    }
    return said;
}

const RankedCandidate* leading(const Plan& plan) {
    for (const CandidateSays says :
         {CandidateSays::worth_agreeing, CandidateSays::find_out_first}) {
        const auto found = std::ranges::find(plan.ranked, says, &RankedCandidate::says);
        if (found != plan.ranked.end()) {
            return &*found;
        }
    }
    return nullptr;
}

std::string plan_sentence(const Plan& plan, const CareInput& care) {
    const RankedCandidate* best = leading(plan);
    switch (plan.says) {
        case PlanSays::one_is_agreed:
            if (!plan.agreed_closed.empty()) {
                return fmt::format(
                    "The change agreed (\"{}\") does not go on: something that comes first has "
                    "closed it. Tell the client, and say how it ended.",
                    care.facts.agreed_change->words);
            }
            return fmt::format(
                "One change is agreed (\"{}\"): with two at once nothing can be learnt. Say how it "
                "ended before another is agreed.",
                care.facts.agreed_change->words);
        case PlanSays::nothing_offered:
            return "Nothing is offered now: every change is closed by something that comes first.";
        case PlanSays::agree_on_one:
            return fmt::format("One to talk about: {}. Agree on it in the client's own words.",
                               best->change->words);
        case PlanSays::find_out_first:
            return fmt::format("No change yet: find out first whether it is worth it: {}. {}",
                               best->change->words,
                               *best->change->trial != '\0' ? "A trial would tell."
                               : seen_on_both_kinds_of_day(*best)
                                   ? "It is noted on both kinds of day already: varied by lot, the "
                                     "next wear would tell."
                                   : "Noted on both kinds of day, the next wear would tell.");
        case PlanSays::no_change_yet:
            break;
    }
    return plan.ranked.empty()
               ? "No change yet: these days say nothing of any change that may be offered."
               : "No change yet: none of these is likely to be worth it by these days.";
}

}  // namespace tracewright
