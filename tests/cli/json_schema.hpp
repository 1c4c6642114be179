#pragma once

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace tracewright::testing {

/// The part of JSON Schema 2020-12 that docs/formats uses: type, enum, const, properties, required,
/// additionalProperties, items, prefixItems left out, minimum, maximum, pattern left out, $ref to
/// $defs. Returns what does not hold, each with its place; empty if all does. A keyword it does not
/// know is itself told, so that no schema is checked by half.
std::vector<std::string> misfits(const nlohmann::json& value, const nlohmann::json& schema,
                                 const nlohmann::json& root, const std::string& at = "$");

/// Fails for each thing in which the document misses the schema of this name in docs/formats.
void meets(const std::string& document, const std::string& schema_name);

/// The whole file; empty where there is none.
std::string text_of(const std::filesystem::path& path);

}  // namespace tracewright::testing
