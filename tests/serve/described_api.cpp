#include "serve/described_api.hpp"

#include "cli/json_schema.hpp"
#include "source_folder.hpp"

#include <fstream>

namespace tracewright::testing {

using nlohmann::json;

namespace {

const std::string source = TRACEWRIGHT_SOURCE_FOLDER;

json read(const std::string& path) {
    std::ifstream file(source + "/docs/api/" + path);
    return json::parse(file, nullptr, false);
}

}  // namespace

json DescribedApi::described_api() {
    return read("openapi.json");
}

// The components and the documents of docs/formats that are referred to, under one roof.
json DescribedApi::all_schemas(const json& api) {
    json defs = api["components"]["schemas"];
    for (const char* name : {"caseload", "client-facts", "review"}) {
        const std::string file = std::string(name) + ".schema.json";
        const json schema = read("../formats/" + file);
        EXPECT_TRUE(schema.is_object()) << file;
        defs[file] = schema;
        const json within = schema.value("$defs", json::object());
        for (const auto& [own, inner] : within.items()) {
            defs[own] = inner;
        }
    }
    return {{"$defs", defs}};
}

Got DescribedApi::ask(int expected, const std::string& method, const std::string& pattern,
                      const std::string& target, const Sitting& who, const json& body,
                      const std::map<std::string, std::string>& headers) {
    return held(expected, method == "GET" ? "get" : "post", pattern,
                method == "GET" ? served.get(target, who, headers)
                                : served.send(method, target, body, who, headers));
}

Got DescribedApi::ask_with_file(int expected, const std::string& pattern, const std::string& target,
                                const Sitting& who, const std::string& bytes,
                                const std::string& type) {
    return held(expected, "post", pattern, served.send_file(target, bytes, who, type));
}

Got DescribedApi::held(int expected, const std::string& name, const std::string& pattern, Got got) {
    const std::string where = name + " " + pattern + " " + std::to_string(expected);
    EXPECT_EQ(got.status, expected) << where << got.body.substr(0, 400);
    const json& operation = api["paths"][pattern][name];
    const std::string status = std::to_string(got.status);
    if (!operation.contains("responses") || !operation["responses"].contains(status)) {
        ADD_FAILURE() << where << " is not described";
        return got;
    }
    met.insert(name + " " + pattern + " " + status);
    fits(operation["responses"][status], got, where);
    return got;
}

void DescribedApi::fits(const json& described, const Got& got, const std::string& where) {
    if (!described.contains("content")) {
        EXPECT_TRUE(got.body.empty()) << where;
        return;
    }
    const auto content = described["content"].begin();
    EXPECT_EQ(got.headers.at("content-type"), content.key()) << where;
    if (!content->contains("schema")) {
        return;
    }
    json value = got.json();
    const json& schema = (*content)["schema"];
    for (const std::string& misfit : misfits(value, schema, schemas)) {
        ADD_FAILURE() << where << ": " << misfit;
    }
    if (schema == json{{"$ref", "#/components/schemas/Review"}}) {
        for (const char* own : {"figures", "measure_tables", "sufficiency", "rises_to_ask_about"}) {
            value.erase(own);
        }
        const json& review = schemas["$defs"]["review.schema.json"];
        for (const std::string& misfit : misfits(value, review, review)) {
            ADD_FAILURE() << where << ": " << misfit;
        }
    }
}

void DescribedApi::ask_as_anybody(const std::string& pattern, const std::string& target,
                                  const std::string& of_nobody, const json& body,
                                  const Sitting& reader, const Sitting& owner) {
    ask(401, "POST", pattern, target, {}, body);
    ask(403, "POST", pattern, target, reader, body);
    ask(404, "POST", pattern, of_nobody, owner, body);
    ask(400, "POST", pattern, target, owner, json::array());
    ask(415, "POST", pattern, target, owner, body, {{"Content-Type", "text/xml"}});
    ask(422, "POST", pattern, target, owner, json::object());
}

}  // namespace tracewright::testing
