#pragma once

#include "coaching/kept_trial.hpp"
#include "coaching/licence.hpp"
#include "coaching/trial_plan.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// What is said before a trial is drawn, in words; never its order, so that nobody draws again
/// until the order pleases.
Json json_of_trial_plan(const TrialPlan& plan, const TrialWish& wish, Licence licence,
                        WayOfWriting way);

/// A kept trial day by day: what the lot says, what was told. Labels by the client's calendar.
/// `gates`: what has closed it since it was drawn; then nothing is to be done today.
Json json_of_kept_trial(const KeptTrial& kept, CivilDate today, const std::vector<Gate>& gates,
                        Licence licence, WayOfWriting way);

/// A trial that was read, in words: the days, both ways of reading once it has ended, the items of
/// a report.
Json json_of_trial_reading(const KeptTrial& kept, const TrialReading& reading,
                           const ReviewInput& input);

}  // namespace tracewright
