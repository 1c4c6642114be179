// docs/api/openapi.json and the service say the same: every route is described and nothing else,
// every status that is described is met here, and every reply fits its schema.
#include "cli/json_schema.hpp"
#include "serve/served_practice.hpp"

#include <fstream>
#include <set>
#include <tuple>

namespace tracewright::testing {
namespace {

using nlohmann::json;

const std::string source = TRACEWRIGHT_SOURCE_DIR;

json read(const std::string& path) {
    std::ifstream file(source + "/docs/api/" + path);
    return json::parse(file, nullptr, false);
}

// The components and the documents of docs/formats that are referred to, under one roof.
json all_schemas(const json& api) {
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

class OpenApi : public ::testing::Test {
  protected:
    // Asks, and holds the reply to what is described of it.
    Got ask(int expected, const std::string& method, const std::string& pattern,
            const std::string& target, const Sitting& who, const json& body = {},
            const std::map<std::string, std::string>& headers = {}) {
        return held(expected, method == "GET" ? "get" : "post", pattern,
                    method == "GET" ? served.get(target, who, headers)
                                    : served.send(method, target, body, who, headers));
    }

    // The same of a file's bytes.
    Got ask_with_file(int expected, const std::string& pattern, const std::string& target,
                      const Sitting& who, const std::string& bytes,
                      const std::string& type = "application/octet-stream") {
        return held(expected, "post", pattern, served.send_file(target, bytes, who, type));
    }

    Got held(int expected, const std::string& name, const std::string& pattern, Got got) {
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

    void fits(const json& described, const Got& got, const std::string& where) {
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
            for (const char* own :
                 {"figures", "measure_tables", "sufficiency", "rises_to_ask_about"}) {
                value.erase(own);
            }
            const json& review = schemas["$defs"]["review.schema.json"];
            for (const std::string& misfit : misfits(value, review, review)) {
                ADD_FAILURE() << where << ": " << misfit;
            }
        }
    }

    void ask_of_imports(const Sitting& owner, const Sitting& reader) {
        const std::string place = "/api/clients/{handle}/imports";
        const std::string file = "Time,Glucose mg/dL\n2026-03-08 08:00,120\n2026-03-08 08:05,124\n";
        for (const std::string rest : {"/preview", ""}) {
            const auto of = [&](const std::string& handle) {
                return "/api/clients/" + handle + "/imports" + rest + "?name=a.csv";
            };
            ask_with_file(401, place + rest, of("c2"), {}, file);
            ask_with_file(403, place + rest, of("c2"), reader, file);
            ask_with_file(404, place + rest, of("nobody"), owner, file);
            ask_with_file(415, place + rest, of("c2"), owner, file, "text/csv");
            ask_with_file(422, place + rest, of("c2"), owner, "no table");
            ask_with_file(rest.empty() ? 201 : 200, place + rest, of("c2"), owner, file);
            ask_with_file(200, place + rest, of("c2"), owner,
                          "Time,Glucose\n01/02/2026 08:00,120\n");
        }
        ask(200, "GET", place, "/api/clients/c2/imports", owner);
        ask(401, "GET", place, "/api/clients/c2/imports", {});
        ask(404, "GET", place, "/api/clients/nobody/imports", owner);
        const auto undo = [&](const std::string& number) {
            return "/api/clients/c2/imports/" + number + "/undo";
        };
        const std::string pattern = place + "/{id}/undo";
        const auto newest = [&] {
            return std::to_string(
                served.get("/api/clients/c2/imports", owner).json()["imports"][0]["id"].get<int>());
        };
        const std::string first = newest();
        ask(401, "POST", pattern, undo(first), {});
        ask(403, "POST", pattern, undo(first), reader);
        ask(404, "POST", pattern, undo("1"), owner);  // another client's
        ask_with_file(201, place, "/api/clients/c2/imports?name=b.csv", owner,
                      "Time,Glucose mg/dL\n2026-03-09 08:00,120\n2026-03-09 08:05,124\n");
        ask(422, "POST", pattern, undo(first), owner);
        ask(204, "POST", pattern, undo(newest()), owner);
    }

    // What every change to a client may meet, asked with a body that fits.
    void ask_as_anybody(const std::string& pattern, const std::string& target,
                        const std::string& of_nobody, const json& body, const Sitting& reader,
                        const Sitting& owner) {
        ask(401, "POST", pattern, target, {}, body);
        ask(403, "POST", pattern, target, reader, body);
        ask(404, "POST", pattern, of_nobody, owner, body);
        ask(400, "POST", pattern, target, owner, json::array());
        ask(415, "POST", pattern, target, owner, body, {{"Content-Type", "text/xml"}});
        ask(422, "POST", pattern, target, owner, json::object());
    }

    void ask_of_the_diary(const Sitting& owner, const Sitting& reader) {
        const std::string client = "/api/clients/{handle}";
        const auto of = [](const std::string& rest, const std::string& handle = "c2") {
            return "/api/clients/" + handle + rest;
        };
        const json message{
            {"text", "8:10 porridge"}, {"day", "2026-03-10"}, {"foods", json::array()}};
        for (const std::string rest : {"/diary/preview", "/diary"}) {
            ask_as_anybody(client + rest, of(rest), of(rest, "nobody"), message, reader, owner);
            ask(rest == "/diary" ? 201 : 200, "POST", client + rest, of(rest), owner, message);
        }
        ask(200, "POST", client + "/diary", of("/diary"), owner, message);
        const std::string day = client + "/diary/{date}";
        ask(401, "GET", day, of("/diary/2026-03-10"), {});
        ask(404, "GET", day, of("/diary/2026-03-10", "nobody"), owner);
        ask(422, "GET", day, of("/diary/soon"), owner);
        const json entry =
            ask(200, "GET", day, of("/diary/2026-03-10"), owner).json()["entries"][0];
        ask(200, "GET", client + "/foods", of("/foods?words=oats"), owner);
        ask(401, "GET", client + "/foods", of("/foods?words=oats"), {});
        ask(404, "GET", client + "/foods", of("/foods?words=oats", "nobody"), owner);

        const std::string number = std::to_string(entry["id"].get<int>());
        const auto at = [&](const std::string& rest) {
            return of("/diary/entries/" + number + "/" + rest);
        };
        const std::string correct = client + "/diary/entries/{id}/correct";
        json form = entry["form"];
        ask_as_anybody(correct, at("correct"), of("/diary/entries/999/correct"), form, reader,
                       owner);
        ask(409, "POST", correct, at("correct"), owner, form);
        form["text"] = "oats";
        ask(200, "POST", correct, at("correct"), owner, form);
        const auto fresh = served.get(of("/diary/2026-03-10"), owner).json()["entries"][0];
        const std::string strike = client + "/diary/entries/{id}/strike";
        const std::string target =
            of("/diary/entries/" + std::to_string(fresh["id"].get<int>()) + "/strike");
        ask(401, "POST", strike, target, {});
        ask(403, "POST", strike, target, reader);
        ask(200, "POST", strike, target, owner);
        ask(404, "POST", strike, target, owner);
    }

    void ask_of_clients(const Sitting& owner, const Sitting& reader) {
        const json added{{"name", "Invented"}, {"changes", json::object()}};
        ask(401, "POST", "/api/clients", "/api/clients", {}, added);
        ask(403, "POST", "/api/clients", "/api/clients", reader, added);
        ask(400, "POST", "/api/clients", "/api/clients", owner, json::array());
        ask(415, "POST", "/api/clients", "/api/clients", owner, added,
            {{"Content-Type", "text/xml"}});
        ask(422, "POST", "/api/clients", "/api/clients", owner, json::object());
        const Got got = ask(201, "POST", "/api/clients", "/api/clients", owner, added);
        const std::string handle = got.json()["handle"];
        const std::string client = "/api/clients/{handle}";
        const auto of = [&](const std::string& rest) { return "/api/clients/" + handle + rest; };
        const json was{{"revision", served.get(of(""), owner).json()["revision"]},
                       {"name", "Invented"},
                       {"changes", {{"why_they_came", "Invented"}}}};
        ask_as_anybody(client + "/facts", of("/facts"), "/api/clients/nobody/facts", was, reader,
                       owner);
        ask(204, "POST", client + "/facts", of("/facts"), owner, was);
        ask(409, "POST", client + "/facts", of("/facts"), owner, was);
        const std::string copy = client + "/export/{file}";
        ask(401, "GET", copy, of("/export/client.json"), {});
        ask(403, "GET", copy, of("/export/client.json"), reader);
        ask(404, "GET", copy, of("/export/secrets"), owner);
        ask(200, "GET", copy, of("/export/client.json"), owner);
        const json erased{{"confirm", handle}, {"without_export", "no"}};
        ask_as_anybody(client + "/erase", of("/erase"), "/api/clients/nobody/erase", erased, reader,
                       owner);
        ask(204, "POST", client + "/erase", of("/erase"), owner, erased);
    }

    void ask_of_trust(const Sitting& owner, const Sitting& reader) {
        const std::string client = "/api/clients/{handle}";
        const auto of = [](const std::string& rest, const std::string& handle = "c1") {
            return "/api/clients/" + handle + rest;
        };
        const json trust = ask(200, "GET", client + "/trust", of("/trust"), owner).json();
        ask(401, "GET", client + "/trust", of("/trust"), {});
        ask(404, "GET", client + "/trust", of("/trust", "nobody"), owner);
        ask(422, "GET", client + "/trust", of("/trust") + "?from=yesterday", owner);
        const json mark{{"from", "2026-02-27T02:00"}, {"to", "2026-02-27T04:00"}, {"why", "x"}};
        ask_as_anybody(client + "/stretches", of("/stretches"), of("/stretches", "nobody"), mark,
                       reader, owner);
        const Got told = ask(201, "POST", client + "/stretches", of("/stretches"), owner, mark);
        const json& first = trust["stretches"][0];
        const json count{{"begins", first["begins"]}, {"ends", first["ends"]}, {"why", "x"}};
        ask_as_anybody(client + "/stretches/count", of("/stretches/count"),
                       of("/stretches/count", "nobody"), count, reader, owner);
        ask(201, "POST", client + "/stretches/count", of("/stretches/count"), owner, count);
        ask(200, "GET", client + "/trust", of("/trust"), owner);
        const std::string back = client + "/stretches/{id}/take-back";
        const std::string target =
            of("/stretches/" + std::to_string(told.json()["id"].get<int>()) + "/take-back");
        ask(401, "POST", back, target, {});
        ask(403, "POST", back, target, reader);
        ask(204, "POST", back, target, owner);
        ask(404, "POST", back, target, owner);
    }

    void ask_of_shares(const Sitting& owner, const Sitting& reader) {
        const std::string place = "/api/clients/{handle}/shares";
        const json share{{"recipient", "Reed (invented)"},
                         {"purpose", "to help at night"},
                         {"kinds", "lows"},
                         {"days", "14"},
                         {"until", "2026-04-08"}};
        ask_as_anybody(place, "/api/clients/c1/shares", "/api/clients/nobody/shares", share, reader,
                       owner);
        {
            const auto practice = opened_practice(served.path());
            auto record = *practice->client(1);
            record.facts.consent.given_on = CivilDate{std::chrono::days{20'000}};
            ASSERT_TRUE(practice->change_client(record, acting()));
        }
        const json told = ask(201, "POST", place, "/api/clients/c1/shares", owner, share).json();
        const std::string address = told["address"];
        ask(200, "GET", "/share/{token}", address, {});
        ask(403, "GET", "/share/{token}", "/share/none", {});
        ask(200, "GET", "/share/{token}/{kind}", address + "/lows", {});
        ask(403, "GET", "/share/{token}/{kind}", address + "/mood", {});
        const auto revoke = [&](const std::string& handle) {
            return "/api/clients/" + handle + "/shares/" + std::to_string(told["id"].get<int>()) +
                   "/revoke";
        };
        ask(401, "POST", place + "/{id}/revoke", revoke("c1"), {});
        ask(403, "POST", place + "/{id}/revoke", revoke("c1"), reader);
        ask(404, "POST", place + "/{id}/revoke", revoke("c2"), owner);
        ask(204, "POST", place + "/{id}/revoke", revoke("c1"), owner);
        ask(200, "GET", place, "/api/clients/c1/shares", owner);
        ask(401, "GET", place, "/api/clients/c1/shares", {});
        ask(404, "GET", place, "/api/clients/nobody/shares", owner);
    }

    json api = read("openapi.json");
    json schemas = all_schemas(api);
    ServedPractice served;
    std::set<std::string> met;
};

TEST_F(OpenApi, describes_every_route_and_nothing_else) {
    std::set<std::string> described;
    for (const auto& [pattern, operations] : api["paths"].items()) {
        for (const auto& [method, operation] : operations.items()) {
            described.insert(method + " " + pattern);
            const bool open = operation.contains("security") && operation["security"].empty();
            for (const Route& route : routes()) {
                if (route.pattern == pattern && name_of(route.method) == method) {
                    EXPECT_EQ(open, route.asks == Asks::anyone) << pattern;
                }
            }
        }
    }
    std::set<std::string> known;
    for (const Route& route : routes()) {
        known.insert(name_of(route.method) + std::string(" ") + std::string(route.pattern));
    }
    EXPECT_EQ(described, known);
}

TEST_F(OpenApi, every_status_is_met_and_every_reply_fits) {
    ASSERT_TRUE(api.is_object());
    const Sitting owner = served.signed_in();
    const Sitting reader = served.signed_in("r1");
    const std::string clients = "/api/clients/{handle}";
    const auto of = [](const std::string& handle, const std::string& rest = "") {
        return "/api/clients/" + handle + rest;
    };

    const json right{{"coach", "k1"}, {"passphrase", "passphrase of k1"}};
    const json wrong{{"coach", "k1"}, {"passphrase", "another"}};
    const std::string sign_in = "/api/sign-in";
    ask(200, "POST", sign_in, sign_in, {}, right);
    ask(401, "POST", sign_in, sign_in, {}, wrong);
    ask(400, "POST", sign_in, sign_in, {}, json::array());
    ask(415, "POST", sign_in, sign_in, {}, right, {{"Content-Type", "text/plain"}});
    ask(422, "POST", sign_in, sign_in, {}, json::object());
    for (int i = 0; i < 4; ++i) {
        ask(401, "POST", sign_in, sign_in, {}, wrong);
    }
    ask(429, "POST", sign_in, sign_in, {}, wrong);

    for (const char* plain : {"/api/session", "/api/caseload", "/api/clients"}) {
        ask(200, "GET", plain, plain, owner);
        ask(401, "GET", plain, plain, {});
    }
    ask(401, "GET", "/api/events", "/api/events", {});
    {
        Wire stream(served.port());
        stream.send(served.written("GET", "/api/events", owner, {}, ""));
        const Got got = stream.take();
        EXPECT_EQ(got.status, 200);
        fits(api["paths"]["/api/events"]["get"]["responses"]["200"], got, "events");
        met.insert("get /api/events 200");
    }
    for (const char* rest : {"", "/review", "/review.html", "/review.pdf", "/measures", "/days",
                             "/days/{date}", "/trace", "/escalations", "/notes", "/promises"}) {
        std::string place = rest;
        if (const auto at = place.find("{date}"); at != std::string::npos) {
            place.replace(at, 6, "2026-02-26");
        }
        ask(200, "GET", clients + rest, of("c1", place), owner);
        ask(401, "GET", clients + rest, of("c1", place), {});
        ask(404, "GET", clients + rest, of("nobody", place), owner);
    }
    ask(404, "GET", clients + "/review", of("c2", "/review"), owner);
    for (const char* rest : {"/review", "/review.html", "/review.pdf", "/measures", "/trace"}) {
        ask(422, "GET", clients + rest, of("c1", rest) + "?from=yesterday", owner);
        ask(422, "GET", clients + rest, of("c1", rest) + "?from=2026-03-04&to=2026-03-01", owner);
        ask(200, "GET", clients + rest, of("c1", rest) + "?from=2026-02-27&to=2026-03-01", owner);
    }
    ask(422, "GET", clients + "/trace", of("c1", "/trace") + "?from=2020-01-01", owner);
    ask(422, "GET", clients + "/days/{date}", of("c1", "/days/today"), owner);

    // The plan and the papers, of a client whose list of medicines and eating screen are open.
    ask(200, "GET", clients + "/plan", of("c1", "/plan"), owner);
    ask(200, "GET", clients + "/plan", of("c2", "/plan"), owner);
    ask(401, "GET", clients + "/plan", of("c1", "/plan"), {});
    ask(404, "GET", clients + "/plan", of("nobody", "/plan"), owner);
    const json whole{
        {"words", "walk"},         {"candidate", ""},        {"kind", "other"},
        {"with_prescriber", "no"}, {"when", "after dinner"}, {"where", "outside"},
        {"how_often", "daily"},    {"if_not", "next day"},   {"how_checked", "the next wear"},
        {"check_on", ""},          {"stop_when", "pain"}};
    const json nothing_ends{{"outcome", "kept"}};
    const json because{{"numbers_because", "agreed with the clinic (invented)"}};
    const std::tuple<std::string, json, json> tellings[] = {
        {"/plan/agree", whole, {{"words", "walk"}}},
        {"/plan/end", nothing_ends, {{"outcome", "forgotten"}}},
        {"/handout-with-numbers", because, {{"numbers_because", ""}}}};
    for (const auto& [rest, body, unfit] : tellings) {
        ask(401, "POST", clients + rest, of("c1", rest), {}, body);
        ask(403, "POST", clients + rest, of("c1", rest), reader, body);
        ask(404, "POST", clients + rest, of("nobody", rest), owner, body);
        ask(400, "POST", clients + rest, of("c1", rest), owner, json::array());
        ask(415, "POST", clients + rest, of("c1", rest), owner, body,
            {{"Content-Type", "text/xml"}});
        ask(422, "POST", clients + rest, of("c1", rest), owner, unfit);
    }
    ask(404, "POST", clients + "/plan/end", of("c1", "/plan/end"), owner, nothing_ends);
    ask(200, "POST", clients + "/handout-with-numbers", of("c1", "/handout-with-numbers"), owner,
        because);
    ask(200, "GET", clients + "/papers", of("c1", "/papers"), owner);
    ask(401, "GET", clients + "/papers", of("c1", "/papers"), {});
    ask(404, "GET", clients + "/papers", of("nobody", "/papers"), owner);
    for (const char* form : {"", "/page", "/print"}) {
        const std::string rest = clients + "/papers/{paper}" + form;
        for (const char* paper : {"handout", "talk", "letter", "start-page", "diary-sheet-2"}) {
            ask(200, "GET", rest, of("c1", "/papers/") + paper + form, owner);
        }
        ask(401, "GET", rest, of("c1", "/papers/handout") + form, {});
        ask(404, "GET", rest, of("c2", "/papers/handout") + form, owner);
        ask(404, "GET", rest, of("c1", "/papers/ransom-note") + form, owner);
        ask(422, "GET", rest, of("c1", "/papers/start-page") + form + "?days=40", owner);
    }

    // What goes with it, trials, and whether it helped.
    for (const auto& [rest, asked] :
         std::map<std::string, std::string>{{"/questions", ""},
                                            {"/ask", "?about=fasting&because=sleep"},
                                            {"/meals", ""},
                                            {"/trials", ""},
                                            {"/trial-plan", "?question=walk-after-dinner&pairs=7"},
                                            {"/sensor", ""},
                                            {"/story", ""},
                                            {"/story/page", ""}}) {
        ask(200, "GET", clients + rest, of("c1", rest) + asked, owner);
        ask(401, "GET", clients + rest, of("c1", rest) + asked, {});
        ask(404, "GET", clients + rest, of("nobody", rest) + asked, owner);
    }
    const json sat{{"end", "planned"}, {"overpatch", "yes"}, {"site", "left arm"}};
    ask(204, "POST", clients + "/wears/{number}", of("c1", "/wears/1"), owner, sat);
    ask(401, "POST", clients + "/wears/{number}", of("c1", "/wears/1"), {}, sat);
    ask(403, "POST", clients + "/wears/{number}", of("c1", "/wears/1"), reader, sat);
    ask(404, "POST", clients + "/wears/{number}", of("c1", "/wears/9"), owner, sat);
    ask(400, "POST", clients + "/wears/{number}", of("c1", "/wears/1"), owner, json::array());
    ask(415, "POST", clients + "/wears/{number}", of("c1", "/wears/1"), owner, sat,
        {{"Content-Type", "text/xml"}});
    ask(422, "POST", clients + "/wears/{number}", of("c1", "/wears/1"), owner, json::object());
    ask(422, "GET", clients + "/ask", of("c1", "/ask") + "?about=fasting", owner);
    ask(422, "GET", clients + "/trial-plan", of("c1", "/trial-plan"), owner);
    ask(422, "GET", clients + "/story", of("c1", "/story") + "?diet_started=soon", owner);
    ask(422, "GET", clients + "/story/page", of("c1", "/story/page") + "?surgery_on=soon", owner);
    const std::string comparison = clients + "/before-after";
    ask(401, "GET", comparison, of("c1", "/before-after"), {});
    ask(404, "GET", comparison, of("c1", "/before-after"), owner);
    ask(422, "GET", comparison, of("c1", "/before-after") + "?before=9", owner);
    const json wish{
        {"question", "walk-after-dinner"}, {"pairs", "7"}, {"draw", ""}, {"starts", ""}};
    const std::string trials = clients + "/trials";
    ask(422, "POST", trials, of("c1", "/trials"), owner, wish);  // gates are closed: never asked
    {
        const auto practice = opened_practice(served.path());
        auto record = practice->client(1);
        ASSERT_TRUE(record);
        nothing_to_be_careful_about(record->facts);
        ASSERT_TRUE(practice->change_client(*record, acting()));
        ASSERT_TRUE(practice->bring_in(1, file_of(-std::int64_t{60} * 86'400, 14 * 288),
                                       WhoseFile::not_asked, acting(60)));
    }
    ask(200, "GET", comparison, of("c1", "/before-after"), owner);
    ask(401, "POST", trials, of("c1", "/trials"), {}, wish);
    ask(403, "POST", trials, of("c1", "/trials"), reader, wish);
    ask(404, "POST", trials, of("nobody", "/trials"), owner, wish);
    ask(400, "POST", trials, of("c1", "/trials"), owner, json::array());
    ask(415, "POST", trials, of("c1", "/trials"), owner, wish, {{"Content-Type", "text/xml"}});
    ask(201, "POST", trials, of("c1", "/trials"), owner, wish);
    ask(409, "POST", trials, of("c1", "/trials"), owner, wish);
    ask(200, "GET", trials, of("c1", "/trials"), owner);
    for (const char* form : {"", "/calendar", "/page", "/print"}) {
        ask(200, "GET", trials + "/{number}" + form, of("c1", "/trials/1") + form, owner);
        ask(401, "GET", trials + "/{number}" + form, of("c1", "/trials/1") + form, {});
        ask(404, "GET", trials + "/{number}" + form, of("c1", "/trials/one") + form, owner);
    }
    ask(204, "POST", clients + "/plan/agree", of("c1", "/plan/agree"), owner, whole);
    ask(204, "POST", clients + "/plan/end", of("c1", "/plan/end"), owner, nothing_ends);
    const std::string first_day =
        served.get(of("c1", "/trials"), owner).json()["kept"][0]["days"][0]["day"];
    const std::tuple<std::string, json, json> trial_tellings[] = {
        {"/days", {{"day", first_day}, {"done", "a"}}, {{"day", "2020-01-01"}, {"done", "a"}}},
        {"/stop", {{"because", "a cold (invented)"}}, json::object()}};
    for (const auto& [form, body, unfit] : trial_tellings) {
        const std::string place = trials + "/{number}" + form;
        ask(401, "POST", place, of("c1", "/trials/1") + form, {}, body);
        ask(403, "POST", place, of("c1", "/trials/1") + form, reader, body);
        ask(404, "POST", place, of("c1", "/trials/7") + form, owner, body);
        ask(400, "POST", place, of("c1", "/trials/1") + form, owner, json::array());
        ask(415, "POST", place, of("c1", "/trials/1") + form, owner, body,
            {{"Content-Type", "text/xml"}});
        ask(422, "POST", place, of("c1", "/trials/1") + form, owner, unfit);
    }
    {
        const auto practice = opened_practice(served.path());
        auto record = practice->client(1);
        ASSERT_TRUE(record);
        record->facts.cautions.chest_symptoms = Answered::yes;
        ASSERT_TRUE(practice->change_client(*record, acting()));
    }
    for (const char* form : {"/page", "/print"}) {
        ask(409, "GET", trials + "/{number}" + form, of("c1", "/trials/1") + form, owner);
    }
    // The first day has come by then; told once more, then stopped.
    served.days_on(2);
    const Sitting later = served.signed_in();
    ask(204, "POST", trials + "/{number}/days", of("c1", "/trials/1/days"), later,
        {{"day", first_day}, {"done", "a"}});
    ask(204, "POST", trials + "/{number}/stop", of("c1", "/trials/1/stop"), later,
        {{"because", "a cold (invented)"}});

    const std::pair<std::string, json> changes[] = {
        {"/notes", {{"text", "Invented"}}},
        {"/promises", {{"text", "Invented"}, {"due", "2026-03-12"}}}};
    for (const auto& [rest, body] : changes) {
        ask(201, "POST", clients + rest, of("c1", rest), owner, body);
        ask(401, "POST", clients + rest, of("c1", rest), {}, body);
        ask(403, "POST", clients + rest, of("c1", rest), reader, body);
        ask(403, "POST", clients + rest, of("c1", rest), {owner.cookie, "none"}, body);
        ask(404, "POST", clients + rest, of("nobody", rest), owner, body);
        ask(400, "POST", clients + rest, of("c1", rest), owner, json::array());
        ask(415, "POST", clients + rest, of("c1", rest), owner, body,
            {{"Content-Type", "text/xml"}});
        ask(422, "POST", clients + rest, of("c1", rest), owner, json::object());
    }
    ask(422, "POST", clients + "/promises", of("c1", "/promises"), owner,
        {{"text", "Invented"}, {"due", "soon"}});

    const std::string keep = clients + "/promises/{id}/keep";
    ask(401, "POST", keep, of("c1", "/promises/1/keep"), {});
    ask(403, "POST", keep, of("c1", "/promises/1/keep"), reader);
    ask(204, "POST", keep, of("c1", "/promises/1/keep"), owner);
    ask(404, "POST", keep, of("c1", "/promises/1/keep"), owner);
    ask(404, "POST", keep, of("c1", "/promises/one/keep"), owner);
    // Another client's promise can't be kept by way of this one.
    ask(404, "POST", keep, of("c2", "/promises/1/keep"), owner);

    const std::string answer = clients + "/escalations/{id}/acknowledge";
    const std::string at = of("c1", "/escalations/1/acknowledge");
    const json done{{"by", "Sorrel"}, {"done", "Rang the client (invented)"}};
    {
        const auto practice = opened_practice(served.path());
        ASSERT_TRUE(
            practice->put_escalations(1,
                                      {{0,
                                        "very_low@1772000000",
                                        {},
                                        R"({"rung":1,"at":1772000000,"what":"a","whom":"b"})",
                                        {}}},
                                      acting()));
    }
    ask(401, "POST", answer, at, {}, done);
    ask(403, "POST", answer, at, reader, done);
    ask(400, "POST", answer, at, owner, json::array());
    ask(415, "POST", answer, at, owner, done, {{"Content-Type", "text/xml"}});
    ask(422, "POST", answer, at, owner, {{"by", ""}, {"done", ""}});
    ask(404, "POST", answer, of("c2", "/escalations/1/acknowledge"), owner, done);
    ask(204, "POST", answer, at, owner, done);
    const Got answered = ask(200, "GET", clients + "/escalations", of("c1", "/escalations"), owner);
    EXPECT_NE(answered.body.find("Rang the client (invented)"), std::string::npos);

    ask_of_imports(owner, reader);
    ask_of_the_diary(owner, reader);
    ask_of_clients(owner, reader);
    ask_of_trust(owner, reader);
    ask_of_shares(owner, reader);

    ask(401, "POST", "/api/sign-out", "/api/sign-out", {});
    ask(403, "POST", "/api/sign-out", "/api/sign-out", {reader.cookie, ""});
    ask(204, "POST", "/api/sign-out", "/api/sign-out", reader);

    for (const auto& [pattern, operations] : api["paths"].items()) {
        for (const auto& [method, operation] : operations.items()) {
            for (const auto& [status, described] : operation["responses"].items()) {
                EXPECT_TRUE(status == "default" ||
                            met.contains(method + " " + pattern + " " + status))
                    << method << " " << pattern << " " << status
                    << " is described and not met here";
            }
        }
    }
}

TEST_F(OpenApi, a_day_sheet_is_labelled_by_the_clients_clock) {
    const Sitting who = served.signed_in();
    // 29 March 2026 has 23 hours in Berlin; nothing was seen on it.
    const auto day = served.get("/api/clients/c1/days/2026-03-29", who).json();
    EXPECT_EQ(day["day"]["end"].get<long>() - day["day"]["begin"].get<long>(), 23 * 3600);
    EXPECT_EQ(day["zone"], "Europe/Berlin");
    EXPECT_EQ(day["sentence"], "Nothing was seen on this day.");
    EXPECT_EQ(day["wears"], json::array());
    bool jumped = false;
    for (const auto& tick : day["ticks"]) {
        jumped = jumped || tick["label"] == "03:00 (clock changed)";
    }
    EXPECT_TRUE(jumped);
    EXPECT_EQ(day["band_edges"], (json{54.0, 70.0, 180.0, 250.0}));
    EXPECT_EQ(day["bands"].size(), day["band_edges"].size() + 1);
    const auto seen = served.get("/api/clients/c1/days/2026-02-26", who).json();
    EXPECT_EQ(seen["wears"][0]["at"].size(), 288U);
    EXPECT_EQ(seen["wears"][0]["at"].size(), seen["wears"][0]["value"].size());
    EXPECT_EQ(seen["lanes"][0]["items"].size(), 4U);
}

}  // namespace
}  // namespace tracewright::testing
