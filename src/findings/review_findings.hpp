#pragma once

#include "findings/first_review.hpp"

#include <optional>
#include <vector>

namespace tracewright {

// The findings of a first review, one file each. Every one reads the measured parts of the review
// (trace, fitness, measures, episodes) and none depends on another.

/// Below 54 mg/dL (3.0 mmol/L): episodes of 15 minutes, runs whose end was not seen, implausibly
/// low values and single finger-pricks (safety rule 2), latest first. Empty if there was none.
/// Reads the raw trace: nothing suspect is left out (safety rule 3).
std::optional<Finding> very_low_finding(const FirstReview& review);

/// Above 300 mg/dL (16.7 mmol/L), or above 250 (13.9) for most of a day. Empty if neither was seen.
/// Limits: the ladder of docs/safety.md, from memory.
std::optional<Finding> very_high_finding(const FirstReview& review);

/// Can this wear be trusted: days, share sensed, hours hardly seen, suspect stretches, sensors.
Finding trust_finding(const FirstReview& review);

/// How far two sensors worn at once read apart. Empty where there was one at a time.
std::optional<Finding> two_sensors_finding(const FirstReview& review);

/// Low stretches, all and without the suspect ones; what was not seen.
Finding lows_finding(const FirstReview& review);

/// Hours of the day in range against the goal.
Finding hours_in_range_finding(const FirstReview& review);

/// Average and glucose management indicator.
Finding average_finding(const FirstReview& review);

/// How much glucose varies.
Finding spread_finding(const FirstReview& review);

/// The part of the day in which glucose leaves the range upwards more than chance allows.
Finding when_high_finding(const FirstReview& review);

/// A whole day whose mean stands apart from the others more than chance allows: at most one, the
/// farthest. Grubbs 1969, 10.1080/00401706.1969.10490657, two-sided at 5 %, over days with at least
/// 70 % of their readings, 7 or more of them. Empty if none does.
std::optional<Finding> single_day_finding(const FirstReview& review);

/// One sentence about one day.
std::string day_sentence(const FirstReview& review, const CivilDay& day, const TraceView& view);

/// "First review, 13 to 25 October 2021".
std::string review_title(const FirstReview& review);

/// "The last reading was Mon 2 March 14:10, 3 days ago. ..." and that nothing is known since.
std::string last_reading_sentence(const FirstReview& review);

/// What a review from these data can't say, in words.
std::vector<std::string> what_cannot_be_said(const FirstReview& review);

/// The day with most time in the range shown; null without a day.
const ReviewDay* day_with_most_in_range(const FirstReview& review);

/// One thing seen, to ask, to note next time: set on the review; none of them is a "can't tell".
void set_closing(FirstReview& review);

/// The cautions every page and print bears, once.
std::vector<std::string> cautions();

}  // namespace tracewright
