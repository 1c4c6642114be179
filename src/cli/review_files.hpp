#pragma once

#include "cli/streams.hpp"
#include "findings/first_review.hpp"

#include <string>

namespace tracewright {

/// Writes review.html, review.pdf and review.json into `out`, and says on `streams.out` what the
/// review found and where it is. False, and a sentence on `streams.err`, where one can't be
/// written.
bool write_review(const FirstReview& review, const std::string& out, const Streams& streams);

}  // namespace tracewright
