#include "coaching/agreeing.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/check_plan.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

// What the check of its own candidate says is used where the coach says nothing else.
void plan_check(const Plan& plan, const ReviewInput& input, const CareInput& care, CivilDate today,
                AgreedChange& change) {
    constexpr int usual_days = 14;
    const auto candidate = std::ranges::find_if(plan.ranked, [&](const RankedCandidate& one) {
        return one.change->code == change.candidate;
    });
    if (change.how_checked.empty() && candidate != plan.ranked.end()) {
        const CheckPlan check = check_plan(*candidate, input, care, plan.worth_hours);
        change.how_checked = check.by;
        change.check_days = check.days;
    }
    if (!change.check_on) {
        change.check_on = today + std::chrono::days{change.check_days.value_or(usual_days)};
    }
}

}  // namespace

tl::expected<AgreedChange, NotAgreed> agree_on(AgreedChange wished, bool with_prescriber,
                                               const Plan& plan, const ReviewInput& input,
                                               const CareInput& care, CivilDate today) {
    const auto not_agreed = [](std::string sentence) {
        return tl::make_unexpected(NotAgreed{{}, std::move(sentence)});
    };
    if (care.facts.agreed_change) {
        return not_agreed(plan.sentence);
    }
    const auto closed = std::ranges::find_if(plan.closed, [&](const ClosedCandidate& one) {
        return one.change->code == wished.candidate;
    });
    if (closed != plan.closed.end() && !with_prescriber) {
        return tl::make_unexpected(NotAgreed{closed->gates, {}});
    }
    if (closed != plan.closed.end()) {
        wished.kind = closed->proposed;
    }
    wished.agreed_on = today;
    plan_check(plan, input, care, today, wished);
    if (auto gates = gates_before_agreeing(wished, with_prescriber, care); !gates.empty()) {
        return tl::make_unexpected(NotAgreed{std::move(gates), {}});
    }
    if (const auto missing = lacking(wished); !missing.empty()) {
        return not_agreed(fmt::format("found nothing of: {}; a change is agreed whole",
                                      fmt::join(missing, ", ")));
    }
    if (*wished.check_on <= today) {
        return not_agreed("found a check that is not after the day of agreeing");
    }
    return wished;
}

}  // namespace tracewright
