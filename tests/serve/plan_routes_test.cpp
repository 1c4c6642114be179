// The plan and its papers over HTTP: what a change needs before it is kept, and the formats.
#include "cli/json_schema.hpp"
#include "serve/served_practice.hpp"
#include "source_folder.hpp"

#include <fstream>

namespace tracewright::testing {
namespace {

using nlohmann::json;

json whole_change() {
    return {{"words", "walk round the block (invented)"},
            {"candidate", ""},
            {"kind", "other"},
            {"eating", "nothing"},
            {"moves", "yes"},
            {"medicine", "no"},
            {"with_prescriber", "no"},
            {"when", "right after dinner"},
            {"where", "the park"},
            {"how_often", "on five days a week"},
            {"if_not", "the next day"},
            {"how_checked", "the next wear"},
            {"check_on", ""},
            {"stop_when", "with pain in the chest"}};
}

class PlanRoutes : public ::testing::Test {
  protected:
    void answer_everything() {
        const auto practice = opened_practice(served.path());
        auto record = practice->client(1);
        ASSERT_TRUE(record);
        nothing_to_be_careful_about(record->facts);
        ASSERT_TRUE(practice->change_client(*record, acting()));
    }

    ServedPractice served;
    Sitting owner = served.signed_in();
};

TEST_F(PlanRoutes, is_the_document_of_the_command_with_the_last_reading) {
    json plan = served.get("/api/clients/c1/plan", owner).json();
    EXPECT_TRUE(plan["last_reading"].is_object());
    plan.erase("last_reading");
    plan.erase("today");
    EXPECT_EQ(plan.erase("day_words"), 1U);
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/docs/formats/plan.schema.json");
    const json schema = json::parse(file);
    for (const std::string& misfit : misfits(plan, schema, schema)) {
        ADD_FAILURE() << misfit;
    }
}

TEST_F(PlanRoutes, a_closed_gate_keeps_a_change_from_being_agreed_and_says_what_opens_it) {
    const Got got = served.send("POST", "/api/clients/c1/plan/agree", whole_change(), owner);
    EXPECT_EQ(got.status, 422);
    EXPECT_EQ(got.code(), "gate_closed");
    EXPECT_NE(got.json()["detail"].get<std::string>().find("Ask first."), std::string::npos);
    EXPECT_TRUE(served.get("/api/clients/c1/plan", owner).json()["agreed"].is_null());
}

TEST_F(PlanRoutes, one_change_is_agreed_whole_and_ended) {
    answer_everything();
    json part = whole_change();
    part["where"] = "";
    const Got lacking = served.send("POST", "/api/clients/c1/plan/agree", part, owner);
    EXPECT_EQ(lacking.code(), "not_agreed");
    EXPECT_NE(lacking.body.find("where"), std::string::npos);

    const Got agreed = served.send("POST", "/api/clients/c1/plan/agree", whole_change(), owner);
    EXPECT_EQ(agreed.status, 204) << agreed.body;
    const json plan = served.get("/api/clients/c1/plan", owner).json();
    EXPECT_EQ(plan["agreed"]["words"], "walk round the block (invented)");
    EXPECT_EQ(plan["agreed"]["agreed_on"], plan["today"]);
    EXPECT_TRUE(plan["day_words"].contains(plan["today"].get<std::string>()));
    EXPECT_EQ(plan["says"], "one_is_agreed");

    // With two at once nothing can be learnt.
    const Got second = served.send("POST", "/api/clients/c1/plan/agree", whole_change(), owner);
    EXPECT_EQ(second.code(), "not_agreed");

    EXPECT_EQ(served.send("POST", "/api/clients/c1/plan/end", {{"outcome", "kept"}}, owner).status,
              204);
    const json after = served.get("/api/clients/c1/plan", owner).json();
    EXPECT_TRUE(after["agreed"].is_null());
    EXPECT_EQ(after["earlier"][0]["outcome"], "kept");
}

TEST_F(PlanRoutes, what_a_change_in_other_words_does_has_to_be_answered) {
    answer_everything();
    json change = whole_change();
    change["medicine"] = "";
    const Got got = served.send("POST", "/api/clients/c1/plan/agree", change, owner);
    EXPECT_EQ(got.code(), "gate_closed");
    EXPECT_NE(got.body.find("is not answered"), std::string::npos) << got.body;
    change["medicine"] = "perhaps";
    EXPECT_EQ(served.send("POST", "/api/clients/c1/plan/agree", change, owner).code(),
              "unfit_field");
}

TEST_F(PlanRoutes, a_medicine_in_the_words_is_never_agreed) {
    answer_everything();
    json change = whole_change();
    change["words"] = "take more metformin";
    EXPECT_EQ(served.send("POST", "/api/clients/c1/plan/agree", change, owner).code(),
              "gate_closed");
}

TEST_F(PlanRoutes, numbers_in_spite_of_the_eating_screen_leave_their_reason_among_the_notes) {
    EXPECT_TRUE(served.get("/api/clients/c1/papers", owner).json()["fewer_numbers"].get<bool>());
    const Got made = served.send("POST", "/api/clients/c1/handout-with-numbers",
                                 {{"numbers_because", "the clinic asked (invented)"}}, owner);
    EXPECT_EQ(made.status, 200);
    EXPECT_TRUE(made.body.starts_with("%PDF"));
    EXPECT_NE(served.get("/api/clients/c1/notes", owner).body.find("the clinic asked (invented)"),
              std::string::npos);
}

TEST_F(PlanRoutes, a_blank_reason_brings_no_numbers_back) {
    for (const char* nothing : {"", " ", "...", "\xE2\x80\x8B"}) {
        EXPECT_EQ(served
                      .send("POST", "/api/clients/c1/handout-with-numbers",
                            {{"numbers_because", nothing}}, owner)
                      .code(),
                  "unfit_field");
    }
    EXPECT_EQ(served.get("/api/clients/c1/notes", owner).body.find("in spite of"),
              std::string::npos);
}

TEST_F(PlanRoutes, a_paper_as_a_page_allows_its_own_style_alone) {
    const Got page = served.get("/api/clients/c1/papers/handout/page", owner);
    const std::string& policy = page.headers.at("content-security-policy");
    EXPECT_NE(policy.find("style-src 'sha256-"), std::string::npos);
    EXPECT_EQ(policy.find("script-src"), std::string::npos);
}

}  // namespace
}  // namespace tracewright::testing
