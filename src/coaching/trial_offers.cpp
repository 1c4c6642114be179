#include "coaching/trial_offers.hpp"

#include "findings/open_questions.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace tracewright {

namespace {

// Of several that each send to the clinic the last one does.
std::string joined(const std::vector<std::string>& sentences) {
    constexpr std::string_view clinic = " Ask the clinic.";
    std::string text;
    bool sends = false;
    for (std::string sentence : sentences) {
        sentence.insert(sentence.begin(), ' ');
        while (sentence.ends_with(clinic)) {
            sentence.resize(sentence.size() - clinic.size());
            sends = true;
        }
        text += sentence;
    }
    return sends ? text + std::string(clinic) : text;
}

// From files alone nothing of a person is known: what would have to be answered first, in one
// breath.
bool nothing_is_answered(const std::vector<Gate>& gates) {
    constexpr std::array asked_of_everyone{GateKind::may_be_under_18, GateKind::pregnancy,
                                           GateKind::medicines_not_answered};
    return std::ranges::all_of(gates, &Gate::open_question) &&
           std::ranges::all_of(asked_of_everyone, [&](GateKind kind) {
               return std::ranges::find(gates, kind, &Gate::kind) != gates.end();
           });
}

bool offers_a_trial(const Finding& finding) {
    return finding.next.step == NextStep::run_trial;
}

// Alcohol beside what can bring lows or ketoacidosis is the clinic's to talk about.
bool alcohol_is_the_clinics(const CareInput& care) {
    const MedicineRisks risks = care.medicines.risks_at(care.as_of);
    return !risks.answered || risks.insulin || risks.secretagogue || risks.sglt2;
}

void withhold(QuestionFinding& told, ClientGates& gates, bool alcohol_to_clinic, Licence licence) {
    if (told.cause == Cause::alcohol && alcohol_to_clinic && !told.finding.next.sentence.empty()) {
        told.finding.next = {
            NextStep::contact_prescriber,
            "Alcohol beside insulin, a sulfonylurea, a glinide or an SGLT2 inhibitor (or a list of "
            "medicines not answered) is for the clinic: the client asks there. Nothing about it is "
            "tried out here."};
    } else if (offers_a_trial(told.finding)) {
        withhold_offer(told.finding, gates.before_offer(proposed_by(told.cause), {}), licence);
    }
}

}  // namespace

Proposed proposed_by(Cause cause) {
    switch (cause) {
        case Cause::dinner_carbohydrate:
        case Cause::meal_carbohydrate:
        case Cause::day_carbohydrate:
        case Cause::carbohydrate_before:
            return Proposed::low_carbohydrate;
        case Cause::dinner_energy:
        case Cause::meal_energy:
            return Proposed::weight_loss;
        case Cause::dinner_time:
        case Cause::last_meal_to_bed:
        case Cause::meal_order:
            return Proposed::food_change;
        case Cause::movement:
        case Cause::walk_after:
        case Cause::walk_before:
        case Cause::strength:
            return Proposed::walking;
        case Cause::sleep:
        case Cause::bedtime:
        case Cause::alcohol:
        case Cause::stress:
        case Cause::weekend:
        case Cause::travel:
        case Cause::work_shift:
        case Cause::cycle:
            break;
    }
    return Proposed::other;
}

bool withhold_offer(Finding& finding, const std::vector<Gate>& gates, Licence licence,
                    const std::string& instead) {
    const bool trial = finding.next.step == NextStep::run_trial;
    if (gates.empty() || (!trial && finding.next.step != NextStep::agree_change)) {
        return false;
    }
    const bool to_ask = std::ranges::all_of(gates, &Gate::open_question);
    finding.next = {
        to_ask ? NextStep::ask_client : NextStep::contact_prescriber,
        instead + (trial ? "No trial is offered now." : "It is not offered now.") +
            (nothing_is_answered(gates)
                 ? " What decides on it is not answered: year of birth, pregnancy, type "
                   "of diabetes, medicines, eating and the rest of who this is."
                 : joined(gates_for_coach(gates, licence)))};
    return true;
}

bool withhold_offer(TrialReading& reading, const std::vector<Gate>& gates, Licence licence) {
    if (!gates.empty() && !reading.ended) {
        reading.finding.next.step = NextStep::run_trial;
        return withhold_offer(reading.finding, gates, licence, "Don't go on with it. ");
    }
    return withhold_offer(reading.finding, gates, licence);
}

void withhold_trials(QuestionAnswers& answers, const CareInput& care, Licence licence) {
    ClientGates gates(care);
    const bool to_clinic = alcohol_is_the_clinics(care);
    for (QuestionFinding& told : answers.findings) {
        withhold(told, gates, to_clinic, licence);
    }
}

void withhold_trials(FirstReview& review, const CareInput& care, Licence licence) {
    WhatGoesWithIt& goes_with = review.goes_with;
    ClientGates gates(care);
    const bool to_clinic = alcohol_is_the_clinics(care);
    for (StandingQuestion& question : goes_with.questions) {
        withhold(question.told, gates, to_clinic, licence);
    }
    const auto withhold_where_it_stands = [&](Finding& finding) {
        const auto of_a_question =
            std::ranges::find_if(goes_with.questions, [&](const StandingQuestion& question) {
                return question.told.finding.code == finding.code;
            });
        if (of_a_question != goes_with.questions.end()) {
            finding.next = of_a_question->told.finding.next;
        } else if (finding.code == none_answered_code) {
            finding.next = next_of_the_first_open(goes_with.questions);
        } else if (finding.code == meals_code) {
            withhold_offer(finding, gates.before_offer(Proposed::food_change, {}), licence);
        }
    };
    std::ranges::for_each(goes_with.leading, withhold_where_it_stands);
    std::ranges::for_each(review.findings, withhold_where_it_stands);
}

}  // namespace tracewright
