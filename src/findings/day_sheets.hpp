#pragma once

#include "findings/first_review.hpp"

namespace tracewright {

/// The parts of a first review that day sheets show, and no others: trace, marks, episodes, the
/// days with their sentences. Quick, also for years.
FirstReview day_sheets_of(ReviewInput input);

}  // namespace tracewright
