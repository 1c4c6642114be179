#include "cli/json_schema.hpp"
#include "source_folder.hpp"

#include <gtest/gtest.h>
#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

namespace tracewright::testing {

namespace {

using nlohmann::json;

const std::set<std::string> known = {
    "$schema", "$id",      "$defs",    "$ref",       "title",    "description",
    "type",    "enum",     "const",    "properties", "required", "additionalProperties",
    "items",   "minItems", "maxItems", "minimum",    "maximum"};

bool is_of(const json& value, const std::string& type) {
    return (type == "object" && value.is_object()) || (type == "array" && value.is_array()) ||
           (type == "string" && value.is_string()) || (type == "boolean" && value.is_boolean()) ||
           (type == "null" && value.is_null()) ||
           (type == "integer" && value.is_number_integer()) ||
           (type == "number" && value.is_number());
}

}  // namespace

std::vector<std::string> misfits(const json& value, const json& schema, const json& root,
                                 const std::string& at) {
    std::vector<std::string> found;
    const auto say = [&](const std::string& what) { found.push_back(at + ": " + what); };
    if (schema.is_boolean()) {
        if (!schema.get<bool>()) {
            say("nothing may stand here");
        }
        return found;
    }
    for (const auto& [keyword, ignored] : schema.items()) {
        if (!known.contains(keyword)) {
            say("the schema's keyword " + keyword + " is not checked");
        }
    }
    if (schema.contains("$ref")) {
        const std::string ref = schema["$ref"];
        const std::string name = ref.substr(ref.rfind('/') + 1);
        return misfits(value, root["$defs"][name], root, at);
    }
    if (schema.contains("type")) {
        const json types =
            schema["type"].is_array() ? schema["type"] : json::array({schema["type"]});
        if (std::none_of(types.begin(), types.end(),
                         [&](const json& t) { return is_of(value, t); })) {
            say("is " + std::string(value.type_name()) + ", expected " + types.dump());
            return found;
        }
    }
    if (schema.contains("const") && value != schema["const"]) {
        say("is " + value.dump() + ", expected " + schema["const"].dump());
    }
    if (schema.contains("enum") &&
        std::find(schema["enum"].begin(), schema["enum"].end(), value) == schema["enum"].end()) {
        say(value.dump() + " is none of " + schema["enum"].dump());
    }
    if (value.is_number() && schema.contains("minimum") &&
        value.get<double>() < schema["minimum"].get<double>()) {
        say("below the minimum");
    }
    if (value.is_number() && schema.contains("maximum") &&
        value.get<double>() > schema["maximum"].get<double>()) {
        say("above the maximum");
    }
    if (value.is_array()) {
        if (schema.contains("minItems") && value.size() < schema["minItems"].get<std::size_t>()) {
            say("too few items");
        }
        if (schema.contains("maxItems") && value.size() > schema["maxItems"].get<std::size_t>()) {
            say("too many items");
        }
        for (std::size_t i = 0; schema.contains("items") && i < value.size(); ++i) {
            const auto inner =
                misfits(value[i], schema["items"], root, at + "[" + std::to_string(i) + "]");
            found.insert(found.end(), inner.begin(), inner.end());
        }
    }
    if (value.is_object()) {
        const json none = json::object();
        const json& properties = schema.contains("properties") ? schema["properties"] : none;
        for (const json& name : schema.value("required", json::array())) {
            if (!value.contains(name.get<std::string>())) {
                say("misses " + name.get<std::string>());
            }
        }
        for (const auto& [name, member] : value.items()) {
            const json rest = schema.contains("additionalProperties")
                                  ? schema["additionalProperties"]
                                  : json(true);
            const auto inner = misfits(member, properties.contains(name) ? properties[name] : rest,
                                       root, at + "." + name);
            found.insert(found.end(), inner.begin(), inner.end());
        }
    }
    return found;
}

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void meets(const std::string& document, const std::string& schema_name) {
    const json schema = json::parse(
        text_of(std::filesystem::path(TRACEWRIGHT_SOURCE_FOLDER) / "docs/formats" / schema_name));
    for (const std::string& misfit : misfits(json::parse(document), schema, schema)) {
        ADD_FAILURE() << schema_name << " " << misfit;
    }
}

}  // namespace tracewright::testing
