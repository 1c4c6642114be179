// Stretches marked and unmarked over the wire; both answers told, no reading touched. Everybody is
// invented; own rule, no source.
#include "serve/served_practice.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <algorithm>
#include <cstdio>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

json trust(ServedPractice& served, const Sitting& who) {
    return served.get("/api/clients/c1/trust", who).json();
}

TEST(Trust, says_how_far_the_data_go_and_what_each_number_needs) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json told = trust(served, who);
    EXPECT_THAT(told["sentence"].get<std::string>(), HasSubstr("The sensor saw"));
    EXPECT_GE(told["needs"].size(), 3U);
    EXPECT_THAT(told["needs"].dump(), HasSubstr("21 days"));
    ASSERT_FALSE(told["stretches"].empty());
    EXPECT_EQ(told["stretches"][0]["name"], "warm-up");
    EXPECT_EQ(told["stretches"][0]["marked"], true);
    EXPECT_EQ(served.get("/api/clients/c2/trust", who).code(), "no_readings");
}

// Task T3: which of two at once is counted, why, and the coach's choice in its place.
TEST(Trust, of_two_sensors_at_once_the_counted_one_is_told_and_can_be_chosen) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    EXPECT_TRUE(trust(served, who)["at_once"].empty());
    EXPECT_TRUE(trust(served, who)["agreement"].is_null());
    const auto second = [&] {
        const auto practice = opened_practice(served.path());
        auto file = file_of(1'000, 500, 900, 1, 1.5);
        return practice->bring_in(1, std::move(file), WhoseFile::this_client, acting(60));
    }();
    ASSERT_TRUE(second);
    const auto of_now = [&] {
        for (int tries = 0; tries < 100; ++tries) {
            const json told = trust(served, who);
            if (!told["at_once"].empty()) {
                return told;
            }
            std::this_thread::sleep_for(std::chrono::milliseconds(50));
        }
        return json();
    };
    const json before = of_now();
    ASSERT_TRUE(before.is_object());
    EXPECT_EQ(before["at_once"][0]["counted"], "wear 1");
    EXPECT_EQ(before["at_once"][0]["others"], json({"wear 2"}));
    EXPECT_EQ(before["at_once"][0]["chosen"], false);
    EXPECT_THAT(before["agreement"].get<std::string>(), HasSubstr("on average"));
    const auto choose = [&](const json& wear, const json& chosen) {
        return served.send("POST", "/api/clients/c1/counted-wear",
                           {{"wear", wear}, {"chosen", chosen}}, who);
    };
    ASSERT_EQ(choose("wear 2", true).status, 204);
    const json now = trust(served, who);
    EXPECT_EQ(now["at_once"][0]["counted"], "wear 2");
    EXPECT_EQ(now["at_once"][0]["why"], "a coach chose it");
    EXPECT_EQ(now["at_once"][0]["chosen"], true);
    EXPECT_NE(now["answers"], before["answers"]);
    EXPECT_NE(now["caveats"], before["caveats"]);
    ASSERT_EQ(choose("wear 2", false).status, 204);
    EXPECT_EQ(trust(served, who)["answers"], before["answers"]);
    EXPECT_EQ(choose("wear 9", true).status, 404);
    EXPECT_EQ(choose(2, true).code(), "unfit_choice");
}

TEST(Trust, a_stretch_is_marked_by_the_clients_clock_and_taken_back) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json before = trust(served, who);
    const Got marked = served.send("POST", "/api/clients/c1/stretches",
                                   {{"from", "2026-02-27T02:00"},
                                    {"to", "2026-03-01T04:00"},
                                    {"why", "slept on the sensor (invented)"}},
                                   who);
    ASSERT_EQ(marked.status, 201) << marked.body;
    const json now = trust(served, who);
    json stretch;
    for (const json& one : now["stretches"]) {
        stretch = one["name"] == "marked by a coach" ? one : stretch;
    }
    ASSERT_TRUE(stretch.is_object());
    EXPECT_EQ(stretch["from"], "Fri 27 February 02:00");
    EXPECT_EQ(stretch["why"], "slept on the sensor (invented)");
    const json marks = served.get("/api/clients/c1/days/2026-02-28", who).json()["marks"];
    const auto coachs = std::ranges::find_if(
        marks, [](const json& one) { return one["label"] == "marked by a coach"; });
    ASSERT_NE(coachs, marks.end()) << marks.dump();
    EXPECT_EQ((*coachs)["kind"], "suspect");
    EXPECT_EQ((*coachs)["from"], "Sat 28 February 00:00");
    const auto in_the_review = [&] {
        return served.get("/api/clients/c1/review.html", who).body.find("marked by a coach") !=
               std::string::npos;
    };
    EXPECT_TRUE(in_the_review());
    EXPECT_EQ(served.get("/api/clients/c1/review.html", who).body.find("slept on the sensor"),
              std::string::npos)
        << "the reason is the coach's own";
    for (std::size_t i = 0; i < now["answers"].size(); ++i) {
        EXPECT_EQ(now["answers"][i]["with_all"], before["answers"][i]["with_all"]);
    }
    EXPECT_NE(now["answers"][0]["without_marked"], before["answers"][0]["without_marked"]);
    const std::string number = std::to_string(marked.json()["id"].get<int>());
    const std::string take_back = "/api/clients/c1/stretches/" + number + "/take-back";
    EXPECT_EQ(
        served.send("POST", "/api/clients/c2/stretches/" + number + "/take-back", {}, who).status,
        404);
    ASSERT_EQ(served.send("POST", take_back, {}, who).status, 204);
    EXPECT_EQ(trust(served, who), before);
    EXPECT_EQ(served.send("POST", take_back, {}, who).status, 404);
}

TEST(Trust, what_the_program_marked_counts_after_all_until_that_is_taken_back) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json before = trust(served, who);
    const json mark = before["stretches"][0];
    const auto warm_up = [&] {
        return served.get("/api/clients/c1/trace", who).json()["marks"].dump().find("warm-up") !=
               std::string::npos;
    };
    ASSERT_TRUE(warm_up());
    const Got counted = served.send(
        "POST", "/api/clients/c1/stretches/count",
        {{"begins", mark["begins"]}, {"ends", mark["ends"]}, {"why", "agrees with two pricks"}},
        who);
    ASSERT_EQ(counted.status, 201) << counted.body;
    const json now = trust(served, who);
    EXPECT_EQ(now["stretches"][0]["marked"], false);
    EXPECT_EQ(now["stretches"][0]["why"], "agrees with two pricks");
    EXPECT_FALSE(warm_up());
    const std::string number = std::to_string(counted.json()["id"].get<int>());
    ASSERT_EQ(
        served.send("POST", "/api/clients/c1/stretches/" + number + "/take-back", {}, who).status,
        204);
    EXPECT_EQ(trust(served, who), before);
    EXPECT_TRUE(warm_up());
}

// Safety rule 5: what is out of the measures is never told as counted.
TEST(Trust, a_value_that_glucose_cannot_be_is_never_counted_after_all) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    std::string file = "Time,Glucose mg/dL\n";
    for (int i = 0; i < 24; ++i) {
        file += fmt::format("2026-03-10 {:02}:{:02},{}\n", 2 + i / 12, i % 12 * 5,
                            i == 9 ? 660 : 130 + i % 3);
    }
    ASSERT_EQ(served.send_file("/api/clients/c2/imports?name=a.csv", file, who).status, 201);
    const json told = served.get("/api/clients/c2/trust", who).json();
    json broken;
    for (const json& one : told["stretches"]) {
        broken = one["name"] == "implausible value" ? one : broken;
    }
    ASSERT_TRUE(broken.is_object()) << told.dump();
    EXPECT_EQ(broken["countable"], false);
    EXPECT_EQ(
        served
            .send("POST", "/api/clients/c2/stretches/count",
                  {{"begins", broken["begins"]}, {"ends", broken["ends"]}, {"why", "sure"}}, who)
            .code(),
        "not_countable");
}

TEST(Trust, no_mark_hides_a_very_low_from_the_ladder) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    std::string low = "Time,Glucose mg/dL\n";
    for (int i = 0; i < 24; ++i) {
        char line[64];
        std::snprintf(line, sizeof line, "2026-03-10 %02d:%02d,%d\n", 2 + i / 12, i % 12 * 5,
                      i < 6 || i > 12 ? 100 : 45);
        low += line;
    }
    ASSERT_EQ(served.send_file("/api/clients/c2/imports?name=a.csv", low, who).status, 201);
    ASSERT_EQ(
        served
            .send("POST", "/api/clients/c2/stretches",
                  {{"from", "2026-03-10 02:00"}, {"to", "2026-03-10 05:00"}, {"why", "x"}}, who)
            .status,
        201);
    EXPECT_THAT(served.get("/api/clients/c2/escalations", who).body, HasSubstr("below 54"));
    EXPECT_THAT(served.get("/api/clients/c2/review", who).body, HasSubstr("very_low"));
}

TEST(Trust, what_is_no_stretch_is_refused) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto code = [&](const char* from, const char* to) {
        return served
            .send("POST", "/api/clients/c1/stretches", {{"from", from}, {"to", to}, {"why", "x"}},
                  who)
            .code();
    };
    EXPECT_EQ(code("soon", "2026-03-01T04:00"), "unfit_stretch");
    EXPECT_EQ(code("2026-03-01T04:00", "2026-03-01T04:00"), "unfit_stretch");
    EXPECT_EQ(code("01/02/2026 04:00", "2026-03-01T04:00"), "unfit_stretch");
    EXPECT_EQ(code("2026-03-01", "2026-03-02"), "unfit_stretch");
}

}  // namespace
}  // namespace tracewright::testing
