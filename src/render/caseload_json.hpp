#pragma once

#include "coaching/caseload.hpp"
#include "render/review_json.hpp"

#include <span>

namespace tracewright {

inline constexpr int caseload_json_version = 1;

/// The list of clients as docs/formats/caseload.schema.json says; its time is told in UTC.
Json json_of_caseload(std::span<const CaseloadLine> lines, Instant as_of);

}  // namespace tracewright
