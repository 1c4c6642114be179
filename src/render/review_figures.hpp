#pragma once

#include "findings/first_review.hpp"
#include "render/figure.hpp"

namespace tracewright {

// The figures of a review. Each keeps a reference to the review, which outlives it.

/// One bar lying flat, as long as 24 hours: how long of the day, on average, in each band.
Figure hours_bar(const FirstReview& review);

/// The usual day: median in nested ribbons, the number of days behind every quarter hour, gaps
/// left.
Figure usual_day_figure(const FirstReview& review);

/// One day: the trace, its marks, and under it, aligned in time, what was eaten, done, slept, felt
/// and taken.
Figure day_sheet(const FirstReview& review, const ReviewDay& day);

/// On how many days each hour of the clock was seen.
Figure hours_seen(const FirstReview& review);

}  // namespace tracewright
