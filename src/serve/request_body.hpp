#pragma once

#include "serve/reply.hpp"
#include "serve/request.hpp"

#include <nlohmann/json.hpp>
#include <tl/expected.hpp>

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>

namespace tracewright {

using Fields = std::map<std::string, std::string, std::less<>>;

/// The body as one JSON object with exactly these names, its values of any kind. Error: the reply
/// that says what is wrong (415 another type, 400 no such JSON, 422 a name missing or unknown).
tl::expected<nlohmann::json, Reply> object_of(const Request& request,
                                              std::initializer_list<std::string_view> names);

/// The body as one JSON object with exactly these texts, each at most 20,000 bytes of UTF-8.
/// Error: the reply that says what is wrong (415 another type, 400 no such JSON, 422 a field that
/// is missing, unknown, no text, or too long).
tl::expected<Fields, Reply> fields_of(const Request& request,
                                      std::initializer_list<std::string_view> names);

}  // namespace tracewright
