// Backup and recovery key, over the wire. Everybody is invented; own rules, no source.
#include "access/recovery_key.hpp"
#include "serve/served_practice.hpp"
#include "store/client_export.hpp"
#include "store/practice_backup.hpp"
#include "store/whole_file.hpp"

#include <gmock/gmock.h>

#include <fstream>
#include <set>

namespace tracewright::testing {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using ::testing::HasSubstr;
using ::testing::MatchesRegex;
using ::testing::Not;

std::string everything_of(SqlitePractice& practice, std::int64_t client) {
    const auto holdings = practice.holdings(client, acting(300));
    EXPECT_TRUE(holdings);
    std::string all;
    for (const ExportedFile& file : client_export(*holdings, {})) {
        all += file.name + "\n" + file.bytes;
    }
    return all;
}

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
}

class Safekeeping : public ::testing::Test {
  protected:
    Got backup(const Sitting& who) {
        return served.send("POST", "/api/backup", json::object(), who);
    }
    Got tried(const std::string& key) {
        return served.send("POST", "/api/recovery-key/try", {{"key", key}}, owner);
    }
    std::set<std::string> files() {
        std::set<std::string> names;
        for (const auto& entry : fs::directory_iterator(fs::path(served.path()).parent_path())) {
            names.insert(entry.path().filename().string());
        }
        return names;
    }

    ServedPractice served;
    Sitting owner = served.signed_in();
    Folder elsewhere;
    const std::string right = written_recovery_key(recovery_key_for_tests());
    const std::string wrong = written_recovery_key(key_for_tests());
};

TEST_F(Safekeeping, a_backup_that_was_downloaded_restores_to_the_same_practice) {
    const auto names = files();
    EXPECT_EQ(served.get("/api/backup", owner).json()["last"], json());
    const Got got = backup(owner);
    ASSERT_EQ(got.status, 200);
    EXPECT_EQ(got.headers.at("content-type"), "application/octet-stream");
    EXPECT_EQ(got.headers.at("content-disposition"),
              "attachment; filename=\"practice-2026-03-11.backup\"");
    EXPECT_THAT(got.headers.at("cache-control"), HasSubstr("no-store"));
    EXPECT_THAT(got.body, Not(HasSubstr("SQLite format")));
    EXPECT_THAT(got.body, Not(HasSubstr("Tansy")));
    EXPECT_EQ(files(), names) << "something was left beside the practice";

    write(elsewhere.file("backup"), got.body);
    const auto restored =
        restore_backup(elsewhere.file("backup"), elsewhere.file("practice"), unlock_for_tests);
    ASSERT_TRUE(restored) << restored.error().sentence;
    const auto was = opened_practice(served.path());
    const auto is = opened_practice(elsewhere.file("practice"));
    EXPECT_EQ(is->clients()->size(), 2U);
    for (const std::int64_t client : {1, 2}) {
        EXPECT_EQ(everything_of(*is, client), everything_of(*was, client));
    }
    EXPECT_TRUE(is->faults()->empty());
    const json last = served.get("/api/backup", owner).json()["last"];
    EXPECT_EQ(last["label"], "Wed 11 March 2026, 07:13 UTC");
    EXPECT_EQ(last["coach"], "Sorrel (invented)");
}

TEST_F(Safekeeping, a_coach_makes_a_backup_and_a_reader_does_not) {
    EXPECT_EQ(backup(served.signed_in("k1")).status, 200);
    const Sitting reader = served.signed_in("r1");
    EXPECT_EQ(backup(reader).code(), "not_allowed");
    EXPECT_EQ(served.get("/api/backup/erased", reader).code(), "not_allowed");
    EXPECT_EQ(served.get("/api/backup", reader).status, 200);
    EXPECT_EQ(backup({owner.cookie, "none"}).code(), "missing_token");
    const auto lines = opened_practice(served.path())->audit(std::nullopt);
    EXPECT_EQ(std::ranges::count(*lines, "backup_made", &AuditLine::deed), 1);
}

TEST_F(Safekeeping, the_list_of_the_erased_makes_a_restore_of_an_older_backup_erase_again) {
    write(elsewhere.file("older"), backup(owner).body);
    EXPECT_EQ(served.get("/api/backup", owner).json()["erased"], 0);
    EXPECT_EQ(served.get("/api/backup/erased", owner).body, "");
    ASSERT_EQ(served
                  .send("POST", "/api/clients/c1/erase",
                        {{"confirm", "c1"}, {"without_export", "yes"}}, owner)
                  .status,
              204);
    EXPECT_EQ(served.get("/api/backup", owner).json()["erased"], 1);
    const Got list = served.get("/api/backup/erased", owner);
    EXPECT_EQ(list.headers.at("content-disposition"),
              "attachment; filename=\"practice-2026-03-11.backup.erased\"");
    EXPECT_THAT(list.body, MatchesRegex("[0-9a-f]+\n"));
    EXPECT_EQ(list.body.size(), 33U);
    // Without the list the client comes back, which the place says; with it, not.
    ASSERT_TRUE(
        restore_backup(elsewhere.file("older"), elsewhere.file("without"), unlock_for_tests));
    EXPECT_TRUE(opened_practice(elsewhere.file("without"))->client_called("c1"));
    write(elsewhere.file("list"), list.body);
    ASSERT_TRUE(restore_backup(elsewhere.file("older"), elsewhere.file("with"), unlock_for_tests,
                               {elsewhere.file("list")}));
    const auto again = opened_practice(elsewhere.file("with"));
    EXPECT_EQ(again->client_called("c1").error().kind, StoreErrorKind::not_found);
    EXPECT_TRUE(again->client_called("c2"));
}

TEST_F(Safekeeping, the_paper_with_the_key_opens_the_practice_or_does_not) {
    EXPECT_EQ(served.get("/api/recovery-key", owner).json(), (json{{"last", nullptr}}));
    EXPECT_EQ(tried(wrong).json(), (json{{"opens", false}}));
    EXPECT_EQ(served.get("/api/recovery-key", owner).json()["last"]["opens"], false);
    EXPECT_EQ(tried(right).json(), (json{{"opens", true}}));
    std::string plainly = right;
    std::ranges::transform(plainly, plainly.begin(), [](unsigned char c) {
        return c == ' ' ? '-' : static_cast<char>(std::tolower(c));
    });
    EXPECT_EQ(tried(plainly).json(), (json{{"opens", true}}));
    const json last = served.get("/api/recovery-key", owner).json()["last"];
    EXPECT_EQ(last, (json{{"opens", true},
                          {"label", "Wed 11 March 2026, 07:13 UTC"},
                          {"coach", "Sorrel (invented)"}}));
}

TEST_F(Safekeeping, a_new_key_was_not_tried_yet_whatever_the_old_one_did) {
    EXPECT_EQ(tried(right).json(), (json{{"opens", true}}));
    const SecretKey renewed = SecretKey::drawn();
    ASSERT_TRUE(opened_practice(served.path())->change_recovery_key(renewed, acting(300)));
    EXPECT_EQ(served.get("/api/recovery-key", owner).json(), (json{{"last", nullptr}}));
    EXPECT_EQ(tried(right).json(), (json{{"opens", false}}));
    EXPECT_EQ(tried(written_recovery_key(renewed)).json(), (json{{"opens", true}}));
}

TEST_F(Safekeeping, after_five_keys_in_vain_the_next_try_waits_and_sign_in_does_not) {
    for (int i = 0; i < 5; ++i) {
        EXPECT_EQ(tried(wrong).json()["opens"], false);
    }
    const Got sixth = tried(right);
    EXPECT_EQ(sixth.status, 429);
    EXPECT_EQ(sixth.code(), "too_many_tries");
    EXPECT_EQ(sixth.headers.at("retry-after"), "300");
    served.wait(std::chrono::minutes{4});
    EXPECT_EQ(tried(right).status, 429);
    EXPECT_FALSE(served.signed_in().cookie.empty());
    served.wait(std::chrono::minutes{1});
    EXPECT_EQ(tried(right).json()["opens"], true);
}

TEST_F(Safekeeping, what_can_not_be_read_as_a_key_says_where_and_costs_no_try) {
    std::string odd = right;
    odd[7] = '!';  // in the second group
    for (int i = 0; i < 8; ++i) {
        const Got got = tried(odd);
        EXPECT_EQ(got.code(), "unfit_key");
        EXPECT_THAT(got.json()["detail"].get<std::string>(), HasSubstr("group 2"));
        EXPECT_THAT(got.body, Not(HasSubstr(right.substr(0, 4))));
    }
    EXPECT_EQ(tried(std::string(2000, '7')).status, 413);
    EXPECT_EQ(tried(right).json()["opens"], true);
}

TEST_F(Safekeeping, a_key_that_was_tried_stands_nowhere) {
    EXPECT_THAT(tried(right).body, Not(HasSubstr(right.substr(0, 4))));
    EXPECT_THAT(tried(wrong).body, Not(HasSubstr(wrong.substr(0, 4))));
    for (const std::string& name : files()) {
        const auto bytes = read_whole_file((fs::path(served.path()).parent_path() / name).string());
        const std::string text(bytes->begin(), bytes->end());
        EXPECT_EQ(text.find(right), std::string::npos) << name;
        EXPECT_EQ(text.find(wrong), std::string::npos) << name;
    }
}

TEST_F(Safekeeping, only_an_owner_tries_the_key) {
    for (const char* coach : {"k1", "r1"}) {
        const Sitting who = served.signed_in(coach);
        EXPECT_EQ(served.send("POST", "/api/recovery-key/try", {{"key", right}}, who).code(),
                  "not_allowed");
        EXPECT_EQ(served.get("/api/recovery-key", who).status, 200);
    }
}

}  // namespace
}  // namespace tracewright::testing
