#pragma once

#include "coaching/gates.hpp"
#include "coaching/trial_reading.hpp"
#include "findings/first_review.hpp"
#include "findings/question_findings.hpp"

namespace tracewright {

/// What a trial that varies this cause by lot would have the client do: which gates it meets. Of
/// carbohydrate and energy the arm with less counts.
Proposed proposed_by(Cause cause);

/// Takes back the trial or the change that a finding's next step offers where a gate is closed for
/// this client (safety rules 7 to 12), and says which; else leaves the finding as it is. `instead`:
/// what may stand before it. Whether an offer was taken back.
bool withhold_offer(Finding& finding, const std::vector<Gate>& gates, Licence licence,
                    const std::string& instead = {});

/// The same for every question that was asked.
void withhold_trials(QuestionAnswers& answers, const CareInput& care, Licence licence);

/// The same for what a review says of causes and meals, on page 1 too.
void withhold_trials(FirstReview& review, const CareInput& care, Licence licence);

/// The same of a trial that was read: before its end it is not to be gone on with.
bool withhold_offer(TrialReading& reading, const std::vector<Gate>& gates, Licence licence);

}  // namespace tracewright
