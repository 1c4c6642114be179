#pragma once

#include "coaching/plan.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace tracewright {

/// Why a change was not agreed: the gates that are closed, or a sentence.
struct NotAgreed {
    std::vector<Gate> gates;
    std::string sentence;
};

/// The change as it is agreed today, where nothing stands against it. How it is checked and on
/// which day is worked out for its candidate where the plan has it and the coach says nothing else;
/// else the coach says how, and the day is after 14 days (common practice, no source). Not agreed:
/// while another goes on, behind a closed gate (gates_before_agreeing), if something of it was not
/// told, or with a check that does not lie ahead.
tl::expected<AgreedChange, NotAgreed> agree_on(AgreedChange wished, bool with_prescriber,
                                               const Plan& plan, const ReviewInput& input,
                                               const CareInput& care, CivilDate today);

}  // namespace tracewright
