#pragma once

#include "coaching/before_after.hpp"
#include "coaching/care_input.hpp"
#include "coaching/licence.hpp"

#include <vector>

namespace tracewright {

/// before_after of the client whom `care` tells of, all medicines counted; its offer of a trial is
/// taken back where a gate is closed, and the gate said (safety rules 7 to 12).
BeforeAfter offered_comparison(const ReviewInput& input, const std::vector<std::size_t>& before,
                               const std::vector<std::size_t>& after, const CareInput& care,
                               Licence licence, const BeforeAfterSettings& settings = {});

}  // namespace tracewright
