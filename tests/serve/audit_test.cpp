// Who did and saw what, over the wire. Everybody is invented; own rules, no source.
#include "serve/served_practice.hpp"

#include <gmock/gmock.h>

#include <algorithm>

namespace tracewright::testing {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

class AuditInWords : public ::testing::Test {
  protected:
    json audit(const std::string& asked = "") {
        return served.get("/api/audit" + asked, owner).json();
    }
    json line_of(const std::string& deed, const std::string& asked = "") {
        const json lines = audit(asked)["lines"];
        const auto found =
            std::ranges::find_if(lines, [&](const json& line) { return line["deed"] == deed; });
        return found == lines.end() ? json() : *found;
    }

    ServedPractice served;
    Sitting owner = served.signed_in();
};

TEST_F(AuditInWords, the_newest_is_first_and_each_says_who_did_what) {
    const json lines = audit()["lines"];
    ASSERT_GT(lines.size(), 5U);
    EXPECT_EQ(lines[0]["deed"], "audit_seen");
    EXPECT_EQ(lines[0]["words"], "looked at who did what");
    EXPECT_EQ(lines[1]["words"], "signed in");
    EXPECT_EQ(lines[1]["coach"], (json{{"handle", "o1"}, {"name", "Sorrel (invented)"}}));
    EXPECT_EQ(lines[1]["client"], json());
    EXPECT_EQ(lines.back()["deed"], "practice_made");
    const json stored = line_of("import_stored");
    EXPECT_EQ(stored["words"], "kept a file or diary entries");
    EXPECT_EQ(stored["client"], (json{{"handle", "c1"}, {"name", "Tansy (invented)"}}));
    EXPECT_EQ(line_of("coach_passphrase_changed")["other_coach"],
              (json{{"handle", "r1"}, {"name", "Sedge (invented)"}}));
    EXPECT_EQ(stored["other_coach"], json());
}

TEST_F(AuditInWords, looking_at_it_is_noted_once_a_sitting) {
    audit();
    audit("?client=c1");
    const auto seen = [&] {
        const auto lines = opened_practice(served.path())->audit(std::nullopt);
        return std::ranges::count(*lines, "audit_seen", &AuditLine::deed);
    };
    EXPECT_EQ(seen(), 1);
    served.get("/api/audit", served.signed_in("r1"));
    EXPECT_EQ(seen(), 2);
}

// 2026-02-25 06:13:20 UTC, in Berlin an hour later.
TEST_F(AuditInWords, times_are_the_clients_or_say_that_they_are_not) {
    ASSERT_TRUE(
        opened_practice(served.path())->add_client("c3", "Burdock (invented)", {}, acting()));
    EXPECT_EQ(line_of("client_added", "?client=c1")["label"], "Wed 25 February 2026, 07:13");
    EXPECT_EQ(line_of("client_added", "?client=c1")["at"], "2026-02-25T07:13:20+01:00");
    EXPECT_EQ(line_of("client_added", "?client=c3")["label"], "Wed 25 February 2026, 06:13 UTC");
    EXPECT_EQ(line_of("practice_made")["label"], "Wed 25 February 2026, 06:13 UTC");
    const json way = {{"dates", "month first"}, {"hours", "12"}, {"glucose", "mmol/L"}};
    ASSERT_EQ(served.send("POST", "/api/writing", way, owner).status, 204);
    EXPECT_EQ(line_of("client_added", "?client=c1")["label"], "Wed February 25, 2026, 7:13 am");
    EXPECT_EQ(line_of("practice_made")["label"], "Wed February 25, 2026, 6:13 am UTC");
}

TEST_F(AuditInWords, pages_follow_each_other_without_a_gap_or_a_line_twice) {
    {
        const auto practice = opened_practice(served.path());
        for (int i = 0; i < 230; ++i) {
            ASSERT_TRUE(practice->note_look(i % 3 == 0 ? 2 : 1, "client_seen", acting(i)));
        }
    }
    audit();  // its own look is noted once, before
    const auto practice = opened_practice(served.path());
    for (const auto& [asked, of] : std::map<std::string, std::optional<std::int64_t>>{
             {"", std::nullopt}, {"client=c1", 1}, {"client=c2", 2}}) {
        auto expected = *practice->audit(of);
        std::ranges::reverse(expected);
        std::vector<std::int64_t> ids;
        json page = audit("?" + asked);
        for (;;) {
            EXPECT_LE(page["lines"].size(), 100U);
            for (const json& line : page["lines"]) {
                ids.push_back(line["id"]);
            }
            if (page["earlier"].is_null()) {
                break;
            }
            EXPECT_EQ(page["earlier"], ids.back());
            page = audit("?before=" + page["earlier"].dump() + "&" + asked);
        }
        ASSERT_EQ(ids.size(), expected.size()) << asked;
        for (std::size_t i = 0; i < ids.size(); ++i) {
            EXPECT_EQ(ids[i], expected[i].id);
        }
    }
}

TEST_F(AuditInWords, of_one_client_tells_of_no_other_and_knows_them_by_handle_alone) {
    served.get("/api/clients/c2", owner);
    const std::string of_one = audit("?client=c1").dump();
    EXPECT_THAT(of_one, HasSubstr("Tansy"));
    EXPECT_THAT(of_one, Not(HasSubstr("Bracken")));
    EXPECT_EQ(served.get("/api/audit?client=nobody", owner).code(), "not_found");
    EXPECT_EQ(served.get("/api/audit?client=Tansy%20(invented)", owner).code(), "not_found");
    for (const char* before : {"0", "-4", "x", ""}) {
        EXPECT_EQ(served.get(std::string("/api/audit?before=") + before, owner).code(),
                  "not_a_line");
    }
}

TEST_F(AuditInWords, of_an_erased_client_nothing_is_left_but_that_one_was) {
    ASSERT_TRUE(opened_practice(served.path())->erase_client(1, acting(200)));
    const json page = audit();
    EXPECT_THAT(page.dump(), Not(HasSubstr("Tansy")));
    EXPECT_THAT(page.dump(), Not(HasSubstr("\"c1\"")));
    EXPECT_EQ(line_of("client_erased")["client"], json());
    EXPECT_EQ(served.get("/api/audit?client=c1", owner).status, 404);
}

}  // namespace
}  // namespace tracewright::testing
