// How the practice writes dates, times and glucose, over the wire. Everybody is invented; own rule,
// no source.
#include "serve/served_practice.hpp"

#include <gmock/gmock.h>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

std::string day_label(ServedPractice& served, const Sitting& who) {
    return served.get("/api/clients/c1/days/2026-02-28", who).json()["label"];
}

TEST(Writing, is_day_first_and_24_hours_until_it_is_set_and_shows_each_way) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json told = served.get("/api/writing", who).json();
    EXPECT_EQ(told["dates"], "day first");
    EXPECT_EQ(told["hours"], "24");
    EXPECT_EQ(told["glucose"], "mmol/L");
    EXPECT_THAT(told["samples"]["dates"]["month first"].get<std::string>(), HasSubstr("March "));
    EXPECT_EQ(told["samples"]["hours"], (json{{"24", "14:40"}, {"12", "2:40 pm"}}));
}

TEST(Writing, every_label_follows_at_once_and_back) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const auto caseload = [&] { return served.get("/api/caseload", who).json().dump(); };
    const auto handout = [&] { return served.get("/api/clients/c1/review.html", who).body; };
    const std::string listed = caseload();
    EXPECT_EQ(day_label(served, who), "Sat 28 February 2026");
    EXPECT_THAT(handout(), HasSubstr("February 2026"));
    const json was = {{"dates", "day first"}, {"hours", "24"}, {"glucose", "mmol/L"}};
    json now = {{"dates", "month first"}, {"hours", "12"}, {"glucose", "mg/dL"}};
    ASSERT_EQ(served.send("POST", "/api/writing", now, who).status, 204);
    EXPECT_EQ(day_label(served, who), "Sat February 28, 2026");
    EXPECT_THAT(handout(), HasSubstr("Sat February 28, 2026"));
    EXPECT_THAT(handout(), Not(HasSubstr("28 February")));
    EXPECT_NE(caseload(), listed);
    const json day = served.get("/api/clients/c1/days/2026-02-28", who).json();
    EXPECT_THAT(day["ticks"].dump(), HasSubstr("2:45 pm"));
    // A new client has the practice's unit; one known already keeps their own.
    const auto unit_of = [&](const std::string& handle) {
        return served.get("/api/clients/" + handle, who).json()["facts"]["unit"];
    };
    const json before = unit_of("c1");
    const Got added = served.send(
        "POST", "/api/clients", {{"name", "Yarrow (invented)"}, {"changes", json::object()}}, who);
    EXPECT_EQ(unit_of(added.json()["handle"]), "mg/dL");
    EXPECT_EQ(unit_of("c1"), before);
    ASSERT_EQ(served.send("POST", "/api/writing", was, who).status, 204);
    EXPECT_EQ(day_label(served, who), "Sat 28 February 2026");
}

TEST(Writing, is_set_only_to_a_way_there_is_and_by_who_may_change) {
    ServedPractice served;
    const Sitting who = served.signed_in();
    const json odd = {{"dates", "year first"}, {"hours", "24"}, {"glucose", "mmol/L"}};
    EXPECT_EQ(served.send("POST", "/api/writing", odd, who).code(), "unfit_writing");
    const json plain = {{"dates", "day first"}, {"hours", "24"}, {"glucose", "mmol/L"}};
    const Sitting reader = served.signed_in("r1");
    EXPECT_EQ(served.send("POST", "/api/writing", plain, reader).code(), "not_allowed");
    EXPECT_EQ(served.get("/api/writing", reader).status, 200);
}

}  // namespace
}  // namespace tracewright::testing
