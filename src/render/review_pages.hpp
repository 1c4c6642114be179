#pragma once

#include "findings/first_review.hpp"

#include <string>

namespace tracewright {

/// The review as one self-contained page: no script, figures as inline SVG with their data as
/// tables, print style included.
std::string review_html(const FirstReview& review);

/// The review on A4, tagged, with title and language, fonts embedded. The same review gives the
/// same bytes.
std::string review_pdf(const FirstReview& review);

/// Day sheets are printed for at most this many days, the last ones; the page says so.
inline constexpr std::size_t most_day_sheets = 31;

}  // namespace tracewright
