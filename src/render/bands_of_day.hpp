#pragma once

#include "findings/first_review.hpp"
#include "render/canvas.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// A band with its share of the time seen.
struct BandOfDay {
    Fill fill;
    const char* name;
    std::string range;  ///< "70 to 180 mg/dL"
    double percent = 0;
};

/// The bands by which a person's hours are shown, lowest first: five, or four in pregnancy. They
/// are apart: what is very low is not told again as low.
std::vector<BandOfDay> bands_of_day(const FirstReview& review);

}  // namespace tracewright
