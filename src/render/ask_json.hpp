#pragma once

#include "findings/question_findings.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int ask_json_version = 1;

/// The document of docs/formats/ask.schema.json.
Json json_of_answers(const QuestionAnswers& answers, const ReviewInput& input);

}  // namespace tracewright
