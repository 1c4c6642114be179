// Trials over HTTP: by lot when kept, one at a time, no verdict before the end.
#include "cli/json_schema.hpp"
#include "serve/served_practice.hpp"
#include "source_folder.hpp"

#include <algorithm>
#include <fstream>

namespace tracewright::testing {
namespace {

using nlohmann::json;

const json wish{{"question", "walk-after-dinner"}, {"pairs", "7"}, {"draw", ""}, {"starts", ""}};

class TrialRoutes : public ::testing::Test {
  protected:
    void answer(Answered chest = Answered::no) {
        const auto practice = opened_practice(served.path());
        auto record = practice->client(1);
        ASSERT_TRUE(record);
        nothing_to_be_careful_about(record->facts);
        record->facts.cautions.chest_symptoms = chest;
        ASSERT_TRUE(practice->change_client(*record, acting()));
    }
    json trials() { return served.get("/api/clients/c1/trials", owner).json(); }
    Got keep() { return served.send("POST", "/api/clients/c1/trials", wish, owner); }

    ServedPractice served;
    Sitting owner = served.signed_in();
};

TEST_F(TrialRoutes, five_pairs_are_refused_with_the_smallest_p_and_seven_are_not) {
    answer();
    const std::string plan = "/api/clients/c1/trial-plan?question=walk-after-dinner&pairs=";
    const json five = served.get(plan + "5", owner).json();
    EXPECT_FALSE(five["can_be_drawn"].get<bool>());
    EXPECT_NE(five["refused_because"].get<std::string>().find("0.0625"), std::string::npos);
    const json seven = served.get(plan + "7", owner).json();
    EXPECT_TRUE(seven["can_be_drawn"].get<bool>());
    EXPECT_NE(seven["sentences"].dump().find("0.0156"), std::string::npos);
}

TEST_F(TrialRoutes, a_plan_never_tells_the_order) {
    answer();
    const json plan =
        served.get("/api/clients/c1/trial-plan?question=walk-after-dinner&pairs=7", owner).json();
    for (const auto& [name, value] : plan.items()) {
        EXPECT_NE(name, "trial");
        EXPECT_NE(name, "seed");
        EXPECT_EQ(value.dump().find("allotted"), std::string::npos);
    }
}

TEST_F(TrialRoutes, one_trial_at_a_time_with_its_seed_told) {
    answer();
    ASSERT_EQ(keep().status, 201);
    EXPECT_EQ(keep().code(), "exists");
    const json all = trials();
    ASSERT_EQ(all["kept"].size(), 1U);
    EXPECT_EQ(all["kept"][0]["seed"], ServedPractice::today().time_since_epoch().count());
    EXPECT_EQ(all["kept"][0]["days"].size(), 14U);
    EXPECT_TRUE(all["one_goes_on"].get<bool>());
}

TEST_F(TrialRoutes, behind_a_closed_gate_nothing_is_drawn_and_nothing_told_of_how) {
    answer(Answered::yes);
    EXPECT_EQ(keep().code(), "gate_closed");
    EXPECT_TRUE(trials()["kept"].empty());
    const json plan =
        served.get("/api/clients/c1/trial-plan?question=walk-after-dinner&pairs=7", owner).json();
    EXPECT_FALSE(plan["gates"].empty());
    EXPECT_TRUE(plan["sentences"].empty());
    EXPECT_TRUE(plan["pairs_needed"].is_null());
    const json all = trials();
    const auto walk = std::ranges::find_if(
        all["templates"], [](const json& one) { return one["code"] == "walk-after-dinner"; });
    ASSERT_NE(walk, all["templates"].end());
    EXPECT_FALSE((*walk)["gates"].empty());
}

// Safety rule 11: a trial drawn before the pregnancy was told of is not gone on with.
TEST_F(TrialRoutes, what_is_told_later_stops_a_trial_that_goes_on) {
    answer();
    ASSERT_EQ(keep().status, 201);
    served.days_on(1);
    owner = served.signed_in();
    EXPECT_TRUE(trials()["kept"][0]["gates"].empty());
    EXPECT_TRUE(trials()["kept"][0]["today"].is_string());
    const auto practice = opened_practice(served.path());
    auto record = practice->client(1);
    ASSERT_TRUE(record);
    record->facts.cautions.pregnancy = Pregnancy::pregnant;
    ASSERT_TRUE(practice->change_client(*record, acting()));
    const json kept = trials()["kept"][0];
    EXPECT_EQ(kept["state"], "running");
    EXPECT_TRUE(kept["today"].is_null());
    EXPECT_NE(kept["gates"].dump().find("maternity or diabetes clinic leads"), std::string::npos);
    for (const char* paper : {"calendar", "page", "print"}) {
        EXPECT_EQ(served.get("/api/clients/c1/trials/1/" + std::string(paper), owner).code(),
                  "gate_closed");
    }
}

TEST_F(TrialRoutes, no_verdict_before_the_end_and_the_commands_reading_after_it) {
    answer();
    ASSERT_EQ(keep().status, 201);
    const json early = served.get("/api/clients/c1/trials/1", owner).json();
    EXPECT_FALSE(early["reading"]["ended"].get<bool>());
    EXPECT_TRUE(early["reading"]["as_allotted"].is_null());
    EXPECT_TRUE(early["figure"].is_null());

    served.days_on(40);
    owner = served.signed_in();
    const json late = served.get("/api/clients/c1/trials/1", owner).json();
    EXPECT_TRUE(late["reading"]["ended"].get<bool>());
    EXPECT_EQ(late["state"], "ended");
    EXPECT_EQ(late["reading"]["as_allotted"]["pairs"], 0);  // no wear saw its days
    EXPECT_FALSE(late["reading"]["report"].empty());
    // Read again, as pages do at each change: it stands in the audit once, else none would rest.
    served.get("/api/clients/c1/trials/1", owner);
    const auto lines = opened_practice(served.path())->audit(1);
    EXPECT_EQ(std::ranges::count(*lines, "trial_read", &AuditLine::deed), 1);
}

TEST_F(TrialRoutes, a_day_that_has_not_come_is_not_told_and_the_last_telling_counts) {
    answer();
    ASSERT_EQ(keep().status, 201);
    const std::string day = trials()["kept"][0]["days"][0]["day"];
    const auto tell = [&](const char* done) {
        return served.send("POST", "/api/clients/c1/trials/1/days", {{"day", day}, {"done", done}},
                           owner);
    };
    EXPECT_EQ(tell("a").code(), "unfit_field");
    served.days_on(3);
    owner = served.signed_in();
    EXPECT_EQ(tell("a").status, 204);
    EXPECT_EQ(tell("neither").status, 204);
    EXPECT_EQ(trials()["kept"][0]["days"][0]["done"], "neither");
}

TEST_F(TrialRoutes, its_calendar_file_has_every_day_and_no_name) {
    answer();
    ASSERT_EQ(keep().status, 201);
    const Got file = served.get("/api/clients/c1/trials/1/calendar", owner);
    EXPECT_EQ(file.headers.at("content-type"), "text/calendar; charset=utf-8");
    std::size_t events = 0;
    for (auto at = file.body.find("BEGIN:VEVENT"); at != std::string::npos;
         at = file.body.find("BEGIN:VEVENT", at + 1)) {
        ++events;
    }
    EXPECT_EQ(events, 14U);
    EXPECT_EQ(file.body.find("Tansy"), std::string::npos);
}

TEST_F(TrialRoutes, what_is_asked_is_the_document_of_the_command) {
    json answers =
        served.get("/api/clients/c1/ask?about=overnight&because=dinner-time,weekend", owner).json();
    answers.erase("rows_called");
    for (json& finding : answers["findings"]) {
        finding.erase("others_words");
        finding.erase("both_words");
    }
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/docs/formats/ask.schema.json");
    const json schema = json::parse(file);
    for (const std::string& misfit : misfits(answers, schema, schema)) {
        ADD_FAILURE() << misfit;
    }
}

TEST_F(TrialRoutes, the_story_is_the_document_of_the_command) {
    json story = served.get("/api/clients/c1/story", owner).json();
    for (const char* own : {"day_words", "next_lab_words", "wears", "line", "last_reading"}) {
        EXPECT_EQ(story.erase(own), 1U) << own;
    }
    // The story refers to the labs' document: each is held to its own.
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/docs/formats/labs.schema.json");
    const json schema = json::parse(file);
    for (const std::string& misfit : misfits(story["labs"], schema, schema)) {
        ADD_FAILURE() << misfit;
    }
}

}  // namespace
}  // namespace tracewright::testing
