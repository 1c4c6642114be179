#pragma once

#include "coaching/before_after.hpp"

namespace tracewright {

/// What the words of a before/after rest on besides its numbers.
struct BeforeAfterTold {
    const ReviewInput& input;
    const std::vector<std::size_t>& before;
    const std::vector<std::size_t>& after;
    const MedicineTimeline& medicines;
    const BeforeAfterSettings& settings;
    bool other_kind;
    bool readable;  ///< enough days on both sides
};

/// Fills the finding of `result` from its numbers.
void tell_before_after(BeforeAfter& result, const BeforeAfterTold& told);

}  // namespace tracewright
