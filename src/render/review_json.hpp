#pragma once

#include "findings/first_review.hpp"
#include "measures/measure.hpp"

#include <nlohmann/json.hpp>

#include <span>
#include <string>

namespace tracewright {

using Json = nlohmann::ordered_json;

/// Versions of the JSON documents (docs/formats); a change that could break a reader raises them.
inline constexpr int measures_json_version = 1;
inline constexpr int review_json_version = 1;

/// ISO 8601 with the offset of the client's clock; without one where no zone was told.
std::string iso_time(Instant at, const ZoneHistory& zones);

Json json_of(const Measures& measures);
Json json_of(std::span<const Episode> episodes, const ZoneHistory& zones, GlucoseUnit unit);
Json json_of(std::span<const Mark> marks, const ZoneHistory& zones);
Json json_of_window(const Fitness& fitness, Interval window, const ZoneHistory& zones);
Json json_of(const Finding& finding);
Json json_of_review(const FirstReview& review);

/// Text that may hold bytes that are no UTF-8 (a path) becomes U+FFFD there instead of an
/// exception.
std::string dumped(const Json& json);

}  // namespace tracewright
