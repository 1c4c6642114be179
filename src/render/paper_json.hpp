#pragma once

#include "coaching/paper.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int paper_json_version = 1;

/// Its blocks and what they hold, in order (docs/formats/paper.schema.json).
Json json_of(const Paper& paper);

}  // namespace tracewright
