#include "coaching/check_plan.hpp"

#include "coaching/before_after.hpp"
#include "coaching/trial_plan.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

std::string minutes_words(double hours) {
    return hours_and_minutes(std::chrono::minutes{std::lround(hours * 60 / 5) * 5});
}

}  // namespace

CheckPlan check_plan(const RankedCandidate& candidate, const ReviewInput& input,
                     const CareInput& care, double worth) {
    CheckPlan check;
    const double seen = std::max(worth, candidate.hours);
    check.days = days_to_check(input, seen);
    if (check.days) {
        check.by = "hours in range of the next wear beside this one";
        check.words = fmt::format(
            "{} days of readings after it, beside as many before, would tell hours in range to {} "
            "a day either way, with both sensors' own error.",
            *check.days, minutes_words(seen));
        return check;
    }
    check.words = fmt::format(
        "Two wears can't tell a gain of {} a day here: the days differ too much, or the sensors' "
        "own error is as large.",
        minutes_words(seen));
    if (const TrialTemplate* made_from = trial_template_called(candidate.change->trial)) {
        TrialWish wish;
        wish.made_from = made_from;
        wish.seed = input.seed;
        const TrialPlan plan = plan_trial(wish, input, care);
        check.pairs = plan.length.blocks;
        check.by = fmt::format("a trial, if we plan one: {}", made_from->question);
        check.words += check.pairs
                           ? fmt::format(" A trial of {} pairs of days would: {}", *check.pairs,
                                         made_from->question)
                           : fmt::format(" How long a trial would take is not known yet: {}",
                                         made_from->question);
    } else {
        check.by = "finger-pricks before and two hours after the meal";
        check.words +=
            " Finger-pricks before and two hours after the meal, on ten days with it and ten "
            "without, show more.";
    }
    return check;
}

}  // namespace tracewright
