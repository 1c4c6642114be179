#include "serve/request_body.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::size_t longest_text = 20'000;
constexpr int deepest = 8;

tl::unexpected<Reply> wrong(int status, std::string_view code, const std::string& detail) {
    return tl::make_unexpected(problem(status, code, "The body can't be used", detail));
}

// The parser calls itself for each bracket: a body of brackets alone must not fill the stack.
bool too_deep(std::string_view text) {
    int depth = 0;
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (quoted) {
            i += c == '\\' ? 1U : 0U;
            quoted = c != '"';
        } else if (c == '"') {
            quoted = true;
        } else if (c == '[' || c == '{') {
            if (++depth > deepest) {
                return true;
            }
        } else if (c == ']' || c == '}') {
            --depth;
        }
    }
    return false;
}

}  // namespace

tl::expected<nlohmann::json, Reply> object_of(const Request& request,
                                              std::initializer_list<std::string_view> names) {
    std::string_view type = request.content_type;
    type = type.substr(0, type.find(';'));
    while (type.ends_with(' ')) {
        type.remove_suffix(1);
    }
    if (type != "application/json") {
        return wrong(415, "not_json", "found another type of body, expected application/json");
    }
    auto json = too_deep(request.body) ? nlohmann::json(nlohmann::json::value_t::discarded)
                                       : nlohmann::json::parse(request.body, nullptr, false);
    if (!json.is_object()) {
        return wrong(400, "malformed_json", "found no JSON object, expected one");
    }
    for (const auto& [name, value] : json.items()) {
        if (std::ranges::find(names, name) == names.end()) {
            return wrong(422, "unknown_field", "found a field that is not known here");
        }
    }
    for (const std::string_view name : names) {
        if (!json.contains(name)) {
            return wrong(422, "missing_field", std::string(name) + ": found none, expected one");
        }
    }
    return json;
}

tl::expected<Fields, Reply> fields_of(const Request& request,
                                      std::initializer_list<std::string_view> names) {
    const auto json = object_of(request, names);
    if (!json) {
        return tl::make_unexpected(json.error());
    }
    Fields fields;
    for (const auto& [name, value] : json->items()) {
        if (!value.is_string() || value.get_ref<const std::string&>().size() > longest_text) {
            return wrong(422, "unfit_field",
                         name + ": found no text of up to 20,000 bytes, expected one");
        }
        fields[name] = value.get<std::string>();
    }
    return fields;
}

}  // namespace tracewright
