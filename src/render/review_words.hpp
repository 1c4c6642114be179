#pragma once

#include "findings/first_review.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Very low and very high: they stand before everything but the last reading's age.
bool urgent(const Finding& finding);

/// What goes with it, as page 1 tells it under one heading.
bool of_what_goes_with_it(const FirstReview& review, const Finding& finding);

/// What can't be said, without what already stands as a caveat beside a finding.
std::vector<std::string> not_yet_said(const FirstReview& review);

inline constexpr const char* standing_questions_note =
    "Chosen before looking and counted together, so that one of many is not taken for an answer by "
    "chance. What goes together need not come from one another.";
inline constexpr const char* standing_caveats_heading = "Why to hold these loosely";
inline constexpr const char* foods_left_off_note =
    "Foods and grams are left off this paper: the eating screen is positive or not answered.";
/// What the review asked by itself, a line each: what these data say; of an answered one what it
/// comes to in hours of the day, of the others what would tell.
std::vector<std::string> standing_lines(const FirstReview& review);

/// Every caveat of the standing questions, each sentence once, named after its questions unless it
/// holds for all of them.
std::vector<std::string> standing_caveats(const FirstReview& review);

/// What is said of meals compared, without those eaten once, which the figure has.
std::vector<std::string> meal_lines(const FirstReview& review);

/// Rises without an entry, to ask about, latest ones last; at most ten with the count of the rest.
std::vector<std::string> rises_to_ask_about(const FirstReview& review);

/// How one answer was found, in a sentence: "Method: counting. Used: 14 days."
std::string method_of(const Finding& finding);

/// A line for each finding: its question and how it was answered.
std::vector<std::string> methods_of(const FirstReview& review);

}  // namespace tracewright
