#pragma once

#include "findings/first_review.hpp"
#include "render/figure.hpp"

namespace tracewright {

// The figures of a review. Each keeps a reference to the review, which outlives it.

/// One bar lying flat, as long as 24 hours: how long of the day, on average, in each band. As long
/// as the time seen where that is too little to tell hours of a day.
/// Narrower than 400 points its key stands in two columns.
Figure hours_bar(const FirstReview& review, double width = 495);

/// The usual day: median in nested ribbons, the number of days behind every quarter hour, gaps
/// left. `plot_height`: of the ribbons alone, points.
Figure usual_day_figure(const FirstReview& review, double plot_height = 220);

/// What stands under a day's trace: a share of the trace alone has no diary to show, and empty
/// lanes would read as a day on which nothing was eaten.
enum class UnderTheTrace { diary, nothing };

/// One day: the trace, its marks, and under it, aligned in time, what was eaten, done, slept, felt
/// and taken.
Figure day_sheet(const FirstReview& review, const ReviewDay& day,
                 UnderTheTrace under = UnderTheTrace::diary);

/// A dot with its interval for each of the main measures, each on a scale of its own; hatched where
/// no interval can be given.
Figure intervals_figure(const FirstReview& review);

/// Meals compared: a dot with its 80 % interval on one scale, largest rise first; what was eaten
/// once in a box of its own. The review must have meals.
Figure foods_figure(const FirstReview& review);

/// Meals in rows by slot on one scale, aligned to the first bite. The review must have meals.
Figure meals_by_slot_figure(const FirstReview& review);

/// On how many days each hour of the clock was seen.
Figure hours_seen(const FirstReview& review);

}  // namespace tracewright
