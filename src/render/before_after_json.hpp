#pragma once

#include "coaching/before_after.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int before_after_json_version = 1;

/// docs/formats/before-after.schema.json.
Json json_of_comparison(const BeforeAfter& found, const ReviewInput& input);

}  // namespace tracewright
