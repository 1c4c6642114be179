#pragma once

#include "diary/eaten_text.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A diary text worked out, as the documents foods and jot hold it.
Json json_of_eaten(const EatenText& eaten);

}  // namespace tracewright
