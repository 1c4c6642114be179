#pragma once

#include "coaching/plan.hpp"

namespace tracewright {

/// How a candidate would be checked once agreed: by hours in range before and after where the
/// client's days and the sensors' own error allow it, else by a trial, else by finger-prick pairs.
/// `worth`: hours a day; what is to be seen is the larger of it and the gain expected.
CheckPlan check_plan(const RankedCandidate& candidate, const ReviewInput& input,
                     const CareInput& care, double worth);

}  // namespace tracewright
