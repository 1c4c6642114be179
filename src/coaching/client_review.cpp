#include "coaching/client_review.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/client_findings.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/trial_offers.hpp"

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

// What the first review of this window finds by itself.
bool told_by_first_review(const Escalation& escalation, const FirstReview& review) {
    const std::string& event = escalation.event;
    const bool high = event.starts_with("mostly_above_250") ||
                      (event.starts_with("above_") && !event.starts_with("above_240_") &&
                       !event.starts_with("above_300_finger_prick"));
    return review.trace.window.contains(escalation.at) && (high || event.starts_with("very_low"));
}

std::string kind_of(const Escalation& escalation) {
    return escalation.event.substr(0, escalation.event.find('@'));
}

// What the first review does not tell by itself leads until answered: of each kind the latest, with
// how many there are.
void lead_with_escalations(const ClientReviewInput& input, FirstReview& review) {
    std::vector<Finding> leading;
    std::map<std::string, std::size_t> open;
    for (const StandingEscalation& standing : input.escalations) {
        if (!told_by_first_review(standing.escalation, review) && standing.answer.empty()) {
            ++open[kind_of(standing.escalation)];
        }
    }
    for (const StandingEscalation& standing : input.escalations) {
        const auto kind = open.find(kind_of(standing.escalation));
        if (!standing.answer.empty() || kind == open.end() ||
            told_by_first_review(standing.escalation, review)) {
            continue;
        }
        Finding finding;
        finding.code = "escalation";
        finding.question = name_of(standing.escalation.rung);
        finding.answer = Answer::yes;
        finding.sentence = escalation_sentence(standing.escalation, review.input.zones,
                                               standing.first_seen, review.input.as_of);
        if (kind->second > 1) {
            finding.sentence +=
                " " + std::to_string(kind->second) + " of this kind are not acknowledged yet.";
        }
        finding.next = {NextStep::contact_prescriber, standing.escalation.whom};
        leading.push_back(std::move(finding));
        open.erase(kind);
    }
    const auto emergencies = std::stable_partition(
        leading.begin(), leading.end(),
        [](const Finding& finding) { return finding.question == name_of(Rung::emergency_now); });
    const auto urgent_end =
        std::find_if(review.findings.begin(), review.findings.end(), [](const Finding& finding) {
            return finding.code != "very_low" && finding.code != "very_high";
        });
    review.findings.insert(urgent_end, emergencies, leading.end());
    review.findings.insert(review.findings.begin(), leading.begin(), emergencies);
}

// How many of the events of a finding are answered, and the latest answer.
void tell_answers(const ClientReviewInput& input, FirstReview& review) {
    for (Finding& finding : review.findings) {
        const bool low = finding.code == "very_low";
        if (!low && finding.code != "very_high") {
            continue;
        }
        std::size_t open = 0;
        std::string latest;
        for (const StandingEscalation& standing : input.escalations) {
            if (!told_by_first_review(standing.escalation, review) ||
                standing.escalation.event.starts_with("very_low") != low) {
                continue;
            }
            open += standing.answer.empty() ? 1U : 0U;
            latest = standing.answer.empty() || !latest.empty() ? latest : standing.answer;
        }
        if (!latest.empty()) {
            finding.sentence += " Acknowledged: " + latest + ".";
        }
        finding.sentence += open == 0   ? ""
                            : open == 1 ? " One is not acknowledged yet."
                                        : " " + std::to_string(open) + " are not acknowledged yet.";
    }
}

// What files alone can't know, the client's list may.
void tell_medicines_of_lows(const LadderInput& ladder, FirstReview& review) {
    for (Finding& finding : review.findings) {
        const auto taken_back = std::erase_if(finding.caveats, [](const Caveat& caveat) {
            return caveat.kind == CaveatKind::medicines_not_known;
        });
        if (taken_back == 0) {
            continue;
        }
        const MedicineRisks risks = ladder.medicines.risks_in(review.trace.window);
        finding.caveats.push_back(
            {CaveatKind::medicines_not_known,
             !risks.answered
                 ? "The medicine list is not fully answered, so it counts as able to cause lows."
             : risks.can_cause_lows
                 ? "The medicine list holds at least one that can cause lows."
                 : "The medicine list is answered, and none on it causes lows by itself."});
    }
}

void close_review(const CareInput& care, FirstReview& review) {
    const bool low = std::ranges::any_of(
        review.findings, [](const Finding& finding) { return finding.code == "very_low"; });
    if (!low && !care.medicines.risks_in(review.trace.window).answered) {
        review.one_thing_to_ask = "Which medicines are taken, and since when?";
    } else if (!low && goes_on_as_agreed(care)) {
        review.one_thing_to_ask =
            "How did it go with \"" + care.facts.agreed_change->words + "\"? What made it hard?";
    }
}

}  // namespace

FirstReview client_review(ClientReviewInput input) {
    input.review.of_whom = input.name;
    input.review.foods_left_off = numbers_turned_down(input.facts.cautions.eating);
    FirstReview review = first_review(std::move(input.review));
    const ZoneHistory& clock = review.input.zones;
    const MedicineTimeline medicines = client_medicines(input.facts, clock);
    const LadderInput ladder{
        review.input.wears, review.input.diary, medicines, clock, review.input.unit, {}};
    const CareInput care{input.facts, review.input.wears, review.input.diary, medicines,
                         clock,       review.input.as_of};
    withhold_trials(review, care, input.licence);
    tell_medicines_of_lows(ladder, review);
    tell_answers(input, review);
    lead_with_escalations(input, review);

    const auto after_urgent =
        std::find_if(review.findings.begin(), review.findings.end(),
                     [](const Finding& finding) { return finding.code == "trust"; });
    if (const auto why = why_they_came_finding(input.facts)) {
        review.findings.insert(after_urgent, *why);
    }
    if (auto careful = care_finding(input.facts, medicines, review)) {
        review.findings.push_back(std::move(*careful));
    }
    review.findings.push_back(medicines_finding(medicines, review.trace.window, clock));
    if (auto dips = dips_finding(ladder, input.facts)) {
        review.findings.push_back(std::move(*dips));
    }
    std::vector<CivilDay> days;
    for (const ReviewDay& day : review.days) {
        days.push_back(day.day);
    }
    review.findings.push_back(
        diary_finding(diary_completeness(review.input.diary, days, clock), clock.writing()));
    review.findings.push_back(agreed_change_finding(care));
    if (medicines.risks_in(review.trace.window).answered) {
        std::erase_if(review.cannot_say, [](const std::string& sentence) {
            return sentence.starts_with("Which medicines are taken");
        });
    }
    close_review(care, review);
    return review;
}

}  // namespace tracewright
