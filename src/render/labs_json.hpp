#pragma once

#include "coaching/lab_report.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int labs_json_version = 1;

/// docs/formats/labs.schema.json.
Json json_of_labs(const LabReport& report, const ReviewInput& input);

}  // namespace tracewright
