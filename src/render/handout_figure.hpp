#pragma once

#include "coaching/handout.hpp"
#include "findings/first_review.hpp"
#include "render/figure.hpp"

namespace tracewright {

/// The one picture of a handout: the hours of a day in each band, or an empty day to mark. No
/// numeral stands in it, nor in its text; no letter is smaller than 12 points at its own width.
Figure handout_figure(HandoutPicture picture, const FirstReview& review);
/// The same for a phone's width: what the bands are called stands in rows of three.
Figure narrow_handout_figure(HandoutPicture picture, const FirstReview& review);

}  // namespace tracewright
