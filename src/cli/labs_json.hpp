#pragma once

#include "cli/json_text.hpp"
#include "coaching/lab_report.hpp"

namespace tracewright {

/// docs/formats/labs.schema.json.
Json json_of_labs(const LabReport& report, const ReviewInput& input);

}  // namespace tracewright
