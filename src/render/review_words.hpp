#pragma once

#include "findings/first_review.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Very low and very high: they stand before everything but the last reading's age.
bool urgent(const Finding& finding);

/// What can't be said, without what already stands as a caveat beside a finding.
std::vector<std::string> not_yet_said(const FirstReview& review);

/// How one answer was found, in a sentence: "Method: counting. Used: 14 days."
std::string method_of(const Finding& finding);

/// A line for each finding: its question and how it was answered.
std::vector<std::string> methods_of(const FirstReview& review);

}  // namespace tracewright
