#pragma once

#include "findings/outcome_values.hpp"

#include <optional>

namespace tracewright {

/// What the diary says of a cause on the night, day or meal of `row`; empty where it does not say.
/// `occasion`: of a meal outcome, else null.
std::optional<double> cause_value(Cause cause, Outcome outcome, const DiaryOfDay& today,
                                  const EatingOccasion* occasion, const Diary& all,
                                  std::span<const EatingOccasion> occasions,
                                  const ZoneHistory& zones);

}  // namespace tracewright
