#pragma once

#include "coaching/story.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int story_json_version = 1;

/// docs/formats/story.schema.json.
Json json_of_story(const Story& story, const ReviewInput& input);

}  // namespace tracewright
