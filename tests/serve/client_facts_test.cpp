// A client taken on, what is known told in any order, copies and erasing. Everybody is invented.
#include "serve/served_practice.hpp"

#include <gmock/gmock.h>

#include <cstdio>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

json told(ServedPractice& served, const Sitting& who, const std::string& handle = "c2") {
    return served.get("/api/clients/" + handle, who).json();
}

Got tell(ServedPractice& served, const Sitting& who, const json& changes) {
    const json client = told(served, who);
    return served.send(
        "POST", "/api/clients/c2/facts",
        {{"revision", client["revision"]}, {"name", client["name"]}, {"changes", changes}}, who);
}

bool closes(const json& care, const std::string& offer) {
    for (const json& one : care["closed"]) {
        for (const json& closed : one["closes"]) {
            if (closed == offer) {
                return true;
            }
        }
    }
    return false;
}

TEST(ClientFacts, a_client_is_taken_on_with_a_name_and_a_clock) {
    ServedPractice served;
    const Sitting who = served.signed_in("k1");
    const Got added = served.send(
        "POST", "/api/clients",
        {{"name", "Sorrel (invented)"}, {"changes", {{"zones", {{{"zone", "Europe/Paris"}}}}}}},
        who);
    ASSERT_EQ(added.status, 201) << added.body;
    const std::string handle = added.json()["handle"];
    EXPECT_EQ(told(served, who, handle)["name"], "Sorrel (invented)");
    EXPECT_EQ(told(served, who, handle)["facts"]["zones"][0]["zone"], "Europe/Paris");
    EXPECT_EQ(told(served, who, handle)["last_reading"], json());
    const auto code = [&](const json& body) {
        return served.send("POST", "/api/clients", body, who).code();
    };
    EXPECT_EQ(code({{"name", ""}, {"changes", json::object()}}), "unfit_fact");
    EXPECT_EQ(code({{"name", "A"}, {"changes", {{"zones", {{{"zone", "Middle/Earth"}}}}}}}),
              "unfit_fact");
    // Safety rule 11: under 18 is not taken on.
    EXPECT_EQ(code({{"name", "A"}, {"changes", {{"born_year", 2015}}}}), "unfit_fact");
}

TEST(ClientFacts, are_told_in_any_order_and_who_was_slower_is_told) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json before = told(served, who);
    ASSERT_EQ(tell(served, who, {{"consent", {{"given_on", "2026-03-01"}}}}).status, 200);
    ASSERT_EQ(tell(served, who, {{"why_they_came", "To sleep better"}}).status, 200);
    const json facts = told(served, who)["facts"];
    EXPECT_EQ(facts["consent"]["given_on"], "2026-03-01");
    EXPECT_EQ(facts["why_they_came"], "To sleep better");
    const Got slower = served.send("POST", "/api/clients/c2/facts",
                                   {{"revision", before["revision"]},
                                    {"name", "Another"},
                                    {"changes", {{"why_they_came", "Something else"}}}},
                                   who);
    EXPECT_EQ(slower.status, 409);
    EXPECT_EQ(slower.code(), "changed_meanwhile");
    EXPECT_EQ(told(served, who)["facts"]["why_they_came"], "To sleep better");
}

TEST(ClientFacts, a_name_is_not_taken_away) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const Got nameless = served.send(
        "POST", "/api/clients/c2/facts",
        {{"revision", told(served, who)["revision"]}, {"name", ""}, {"changes", json::object()}},
        who);
    EXPECT_EQ(nameless.code(), "unfit_fact");
    EXPECT_EQ(told(served, who)["name"], "Bracken (invented)");
}

TEST(ClientFacts, what_is_not_asked_closes_only_what_depends_on_it) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    EXPECT_TRUE(closes(told(served, who)["care"], "fasting"));
    EXPECT_TRUE(closes(told(served, who)["care"], "walking"));
    EXPECT_TRUE(told(served, who)["care"]["medicines_asked_on"].is_null());
    const json none = json::array({{{"written", "none"}, {"from", nullptr}, {"until", nullptr}}});
    const json no = "no";
    ASSERT_EQ(tell(served, who,
                   {{"medicines", none},
                    {"born_year", 1960},
                    {"cautions",
                     {{"pregnancy", no},
                      {"chest_symptoms", no},
                      {"numb_feet_or_wound", no},
                      {"eye_disease", no},
                      {"frail", no}}}})
                  .status,
              200);
    const json client = told(served, who);
    // Telling medicines is having asked about them, today.
    EXPECT_EQ(client["facts"]["medicines_asked_on"], "2026-03-11");
    EXPECT_EQ(client["care"]["medicines_asked_on"], "Wed 11 March 2026");
    EXPECT_EQ(client["care"]["medicines"][0], "no medicines");
    EXPECT_FALSE(closes(client["care"], "walking")) << client["care"].dump(1);
    EXPECT_TRUE(closes(client["care"], "a change of food"));  // the eating screen is open
}

TEST(ClientFacts, a_medicine_not_recognised_is_to_be_asked_about) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    ASSERT_EQ(tell(served, who,
                   {{"medicines",
                     {{{"written", "gliclazide 30 mg"}, {"from", "2026-01-02"}},
                      {{"written", "the white one"}, {"from", nullptr}}}}})
                  .status,
              200);
    const json care = told(served, who)["care"];
    EXPECT_THAT(care["medicines"][0].get<std::string>(), HasSubstr("gliclazide"));
    EXPECT_THAT(care["medicines"][1].get<std::string>(), HasSubstr("please ask"));
    EXPECT_THAT(care["to_ask"].dump(), HasSubstr("the white one"));
}

// Safety rule 2: not only once somebody opens the client again.
TEST(ClientFacts, a_medicine_that_causes_lows_makes_those_that_were_seen_an_event) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    ASSERT_EQ(tell(served, who,
                   {{"medicines_asked_on", "2026-01-02"},
                    {"medicines", {{{"written", "metformin 500"}}}}})
                  .status,
              200);
    std::string file = "time;glucose mg/dL\n";
    for (int minute = 0; minute < 240; minute += 5) {
        const bool low = (minute >= 30 && minute < 60) || (minute >= 150 && minute < 180);
        char time[32];
        std::snprintf(time, sizeof time, "2026-03-02 %02d:%02d", 8 + minute / 60, minute % 60);
        file += std::string(time) + (low ? ";62\n" : ";110\n");
    }
    ASSERT_EQ(served.send_file("/api/clients/c2/imports?name=readings.csv", file, who).status, 201);
    const auto lows_told = [&] {
        return served.get("/api/caseload", who).body.find("each within 7 days") !=
               std::string::npos;
    };
    EXPECT_FALSE(lows_told());
    ASSERT_EQ(
        tell(served, who,
             {{"medicines", {{{"written", "metformin 500"}}, {{"written", "gliclazide 30 mg"}}}}})
            .status,
        200);
    EXPECT_TRUE(lows_told());
}

TEST(ClientFacts, what_is_told_elsewhere_is_refused_here) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    for (const json& changes :
         {json{{"agreed_change", {{"words", "walk"}}}}, json{{"colour", "red"}},
          json{{"born_year", "young"}}, json{{"unit", "stone"}}, json::array()}) {
        EXPECT_EQ(tell(served, who, changes).code(), "unfit_fact") << changes;
    }
}

TEST(ClientFacts, copies_first_then_erased_for_good_by_an_owner) {
    ServedPractice served;
    const Sitting owner = served.signed_in();
    const auto erase = [&](const Sitting& who, const char* confirm, const char* none) {
        return served.send("POST", "/api/clients/c1/erase",
                           {{"confirm", confirm}, {"without_export", none}}, who);
    };
    EXPECT_EQ(erase(served.signed_in("k1"), "c1", "yes").status, 403);
    EXPECT_EQ(erase(owner, "c1", "no").code(), "not_exported");
    const Got readings = served.get("/api/clients/c1/export/readings.csv", owner);
    EXPECT_EQ(readings.status, 200);
    EXPECT_THAT(readings.headers.at("content-disposition"), HasSubstr("c1-readings.csv"));
    EXPECT_EQ(served.get("/api/clients/c1/export/secrets", owner).status, 404);
    EXPECT_EQ(erase(owner, "c2", "no").code(), "not_confirmed");
    ASSERT_EQ(erase(owner, "c1", "no").status, 204);
    EXPECT_EQ(served.get("/api/clients/c1", owner).status, 404);
    EXPECT_THAT(served.get("/api/clients", owner).body, Not(HasSubstr("Tansy")));
}

}  // namespace
}  // namespace tracewright::testing
