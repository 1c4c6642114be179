// docs/api/openapi.json and the service say the same: every route is described and nothing else,
// every status that is described is met here, and every reply fits its schema.
#include "serve/described_api.hpp"

#include <fmt/format.h>

#include <set>
#include <tuple>

namespace tracewright::testing {
namespace {

using nlohmann::json;

using OpenApi = DescribedApi;

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

    for (const char* plain : {"/api/session", "/api/caseload", "/api/clients", "/api/writing"}) {
        ask(200, "GET", plain, plain, owner);
        ask(401, "GET", plain, plain, {});
    }
    const std::string writing = "/api/writing";
    const json plainly{{"dates", "day first"}, {"hours", "24"}, {"glucose", "mmol/L"}};
    ask(204, "POST", writing, writing, owner, plainly);
    ask(401, "POST", writing, writing, {}, plainly);
    ask(403, "POST", writing, writing, reader, plainly);
    ask(400, "POST", writing, writing, owner, json::array());
    ask(415, "POST", writing, writing, owner, plainly, {{"Content-Type", "text/xml"}});
    ask(422, "POST", writing, writing, owner, {{"dates", "day first"}});
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
    ask(200, "GET", clients + "/trace", of("c1", "/trace") + "?days=90", owner);
    ask(200, "GET", clients + "/trace", of("c1", "/trace") + "?readings=extremes", owner);
    ask(422, "GET", clients + "/trace", of("c1", "/trace") + "?readings=few", owner);
    for (const char* days : {"0", "94", "two", "1.5", ""}) {
        ask(422, "GET", clients + "/trace", of("c1", "/trace") + "?days=" + days, owner);
    }
    ask(422, "GET", clients + "/days/{date}", of("c1", "/days/today"), owner);

    // The plan and the papers, of a client whose list of medicines and eating screen are open.
    ask(200, "GET", clients + "/plan", of("c1", "/plan"), owner);
    ask(200, "GET", clients + "/plan", of("c2", "/plan"), owner);
    ask(401, "GET", clients + "/plan", of("c1", "/plan"), {});
    ask(404, "GET", clients + "/plan", of("nobody", "/plan"), owner);
    const json whole{
        {"words", "walk"},         {"candidate", ""},        {"kind", "other"},
        {"eating", "nothing"},     {"moves", "yes"},         {"medicine", "no"},
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
    for (const char* form : {"/calendar", "/page", "/print"}) {
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
    ask_of_safekeeping(owner, reader);

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

TEST_F(OpenApi, a_trace_is_as_long_as_asked_and_labelled_at_every_hour) {
    const Sitting who = served.signed_in();
    const auto trace_of = [&](const char* window) {
        return served.get(std::string("/api/clients/c1/trace") + window, who).json();
    };
    const auto length_of = [](const json& trace) {
        return trace["end"].get<long>() - trace["begin"].get<long>();
    };
    const json three = trace_of("?days=3");
    EXPECT_EQ(length_of(three), 3 * 86'400L);
    EXPECT_EQ(three["ticks"].size(), 72U + (three["begin"].get<long>() % 3600 == 0 ? 1U : 0U));
    const json all = trace_of("?days=93");
    EXPECT_EQ(all["end"], three["end"]);
    EXPECT_EQ(length_of(trace_of("")), std::min(14 * 86'400L, length_of(all)));
    for (std::size_t i = 1; i < all["ticks"].size(); ++i) {
        const long apart =
            all["ticks"][i]["at"].get<long>() - all["ticks"][i - 1]["at"].get<long>();
        EXPECT_EQ(apart, 3600) << all["ticks"][i];
    }
}

TEST_F(OpenApi, steps_lead_to_each_value_of_a_wear) {
    const json trace = served.get("/api/clients/c1/trace", served.signed_in()).json();
    ASSERT_FALSE(trace["wears"].empty());
    for (const json& wear : trace["wears"]) {
        long at = wear["begin"];
        std::size_t instants = 1;
        for (std::size_t i = 0; i + 1 < wear["steps"].size(); i += 2) {
            EXPECT_GT(wear["steps"][i], 0);
            EXPECT_GT(wear["steps"][i + 1], 0);
            at += wear["steps"][i].get<long>() * wear["steps"][i + 1].get<long>();
            instants += wear["steps"][i + 1].get<std::size_t>();
        }
        EXPECT_EQ(instants, wear["value"].size());
        EXPECT_GE(wear["begin"], trace["begin"]);
        EXPECT_LT(at, trace["end"].get<long>());
    }
}

TEST_F(OpenApi, extremes_are_two_readings_an_hour_among_the_same_surroundings) {
    const Sitting who = served.signed_in();
    json all = served.get("/api/clients/c1/trace", who).json();
    json few = served.get("/api/clients/c1/trace?readings=extremes", who).json();
    EXPECT_EQ(all["readings"], "all");
    EXPECT_EQ(few["readings"], "extremes");
    ASSERT_EQ(few["wears"].size(), all["wears"].size());
    for (std::size_t i = 0; i < all["wears"].size(); ++i) {
        const json& from = all["wears"][i]["value"];
        const json& to = few["wears"][i]["value"];
        EXPECT_LT(6 * to.size(), 2 * from.size());  // of twelve an hour
        EXPECT_EQ(std::ranges::count(to, json()), std::ranges::count(from, json()));
    }
    for (json* trace : {&all, &few}) {
        for (const char* its_own : {"readings", "wears", "level_words"}) {
            trace->erase(its_own);
        }
    }
    EXPECT_EQ(few, all);
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
    EXPECT_EQ(day["band_edges"], (json{5400, 7000, 18000, 25000}));
    EXPECT_EQ(day["bands"].size(), day["band_edges"].size() + 1);
    EXPECT_EQ(day["edge_words"], (json{"54", "70", "180", "250"}));
    const auto seen = served.get("/api/clients/c1/days/2026-02-26", who).json();
    EXPECT_EQ(seen["wears"][0]["value"].size(), 288U);
    EXPECT_LT(seen["wears"][0]["begin"].get<long>() - seen["day"]["begin"].get<long>(), 300);
    EXPECT_EQ(seen["wears"][0]["steps"], (json{300, 287}));
    // Each level that occurs is worded once.
    std::set<int> levels;
    for (const auto& value : seen["wears"][0]["value"]) {
        levels.insert(value.get<int>());
    }
    ASSERT_EQ(seen["level_words"].size(), levels.size());
    for (const auto& one : seen["level_words"]) {
        EXPECT_TRUE(levels.contains(one["level"].get<int>()));
        EXPECT_EQ(one["words"], fmt::format("{} mg/dL", one["level"].get<int>() / 100));
    }
    EXPECT_EQ(seen["lanes"][0]["items"].size(), 4U);
}

}  // namespace
}  // namespace tracewright::testing
