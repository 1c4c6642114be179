#pragma once

#include "findings/first_review.hpp"
#include "render/canvas.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// One marked stretch of a day. A very low within a low has no label: the low's tells of both.
struct DayMark {
    Interval stretch;  ///< the part within the day
    Fill fill = Fill::none;
    std::string label;
};

/// What a day sheet marks between its clock and its lanes, a row each and only rows with something
/// in them: low stretches with how long they lasted, then suspect stretches with their reason.
std::vector<std::vector<DayMark>> day_marks(const FirstReview& review, const Interval& day);

}  // namespace tracewright
