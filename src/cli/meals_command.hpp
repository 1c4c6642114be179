#pragma once

#include "cli/file_options.hpp"
#include "cli/json_text.hpp"
#include "cli/streams.hpp"
#include "findings/meal_report.hpp"

#include <string>
#include <vector>

namespace tracewright {

inline constexpr int meals_json_version = 1;

/// The responses of each meal, foods compared, rises to ask about and finger-prick pairs, straight
/// from files.
Exit meals(const FileOptions& files, const std::vector<std::string>& diaries, bool json,
           const Streams& streams);

/// The same of what is already known of one client.
Exit meals_of(const ReviewInput& input, bool json, const Streams& streams);

/// The document of docs/formats/meals.schema.json.
Json json_of_meals(const MealReport& report, const ReviewInput& input);

}  // namespace tracewright
