#pragma once

#include "diary/client_foods.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// A correction, recipe or usual food as one line of JSON, keys in fixed order and only where there
/// is something. All of it comes back. Format: `foods` of docs/formats/client.schema.json.
std::string food_document(const ClientFood& food);

/// Error: a sentence that bears nothing of the food.
tl::expected<ClientFood, std::string> food_read(std::string_view document);

}  // namespace tracewright
