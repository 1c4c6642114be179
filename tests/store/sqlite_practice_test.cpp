// What only the file on disk can show: keys, kill, erasure, backup, versions, two programs.
#include "source_folder.hpp"
#include "store/client_export.hpp"
#include "store/practice_for_tests.hpp"
#include "store/practice_schema.hpp"
#include "store/whole_file.hpp"

#include <gmock/gmock.h>
#include <sqlite3.h>
#include <sys/stat.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <thread>

namespace tracewright {
namespace {

namespace fs = std::filesystem;

std::string all_bytes_in(const std::string& folder) {
    std::string bytes;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.is_regular_file()) {
            std::ifstream file(entry.path(), std::ios::binary);
            bytes.append(std::istreambuf_iterator<char>(file), {});
        }
    }
    return bytes;
}

ClientFacts telling_facts() {
    ClientFacts facts;
    facts.why_they_came = "Because of Ragwort-the-reason";
    facts.contacts.push_back({ContactKind::prescriber, "Dr Burdock (invented)", "+00 555 0142"});
    facts.medicines.push_back({"metformin Horehound", {}, {}});
    return facts;
}

constexpr const char* personal[] = {
    "Tansy",          "Ragwort-the-reason", "Burdock", "555 0142",      "Horehound",
    "note of Teasel", "promise of Fennel",  "Comfrey", "arm of Mullein"};

std::int64_t telling_client(SqlitePractice& practice) {
    const auto client = practice.add_client("c1", "Tansy (invented)", telling_facts(), acting());
    EXPECT_TRUE(client);
    EXPECT_TRUE(practice.bring_in(*client, with_meals(file_of(0, 2000), 20), WhoseFile::not_asked,
                                  acting()));
    EXPECT_TRUE(practice.add_note(*client, "note of Teasel", acting()));
    EXPECT_TRUE(practice.add_promise(*client, "promise of Fennel", CivilDate{}, acting()));
    EXPECT_TRUE(
        practice.put_escalations(*client, {{0, "e1", {}, "{\"x\":\"Comfrey\"}", {}}}, acting()));
    EXPECT_TRUE(practice.acknowledge(*client, practice.escalations(*client)->front().id, "Comfrey",
                                     "rang Comfrey", acting()));
    EXPECT_TRUE(practice.tell_fixing(*client, practice.wears(*client)->front().id,
                                     {true, "arm of Mullein"}, acting()));
    return *client;
}

std::string exported(SqlitePractice& practice, std::int64_t client) {
    std::string all;
    const auto holdings = practice.holdings(client, acting());
    EXPECT_TRUE(holdings) << holdings.error().sentence;
    for (const auto& file : client_export(*holdings)) {
        all += file.name + "\n" + file.bytes;
    }
    return all;
}

TEST(SqlitePractice, nothing_personal_stands_in_its_files) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    telling_client(*practice);
    const std::string bytes = all_bytes_in(folder.path());
    EXPECT_GT(bytes.size(), 10'000U);
    for (const char* word : personal) {
        EXPECT_EQ(bytes.find(word), std::string::npos) << word;
    }
    EXPECT_EQ(bytes.find("porridge"), std::string::npos);
    EXPECT_EQ(bytes.find("readings of"), std::string::npos);  // the file's name
}

TEST(SqlitePractice, its_file_is_for_its_owner_only) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    telling_client(*practice);
    for (const auto& entry : fs::directory_iterator(folder.path())) {
        struct stat facts {};
        ASSERT_EQ(::stat(entry.path().c_str(), &facts), 0);
        EXPECT_EQ(facts.st_mode & 077U, 0U) << entry.path();
    }
}

TEST(SqlitePractice, another_passphrase_does_not_open_it_and_a_new_one_replaces_the_old) {
    const Folder folder;
    const std::string path = folder.file("practice");
    new_practice(path);
    const auto with = [&](const char* passphrase) {
        return SqlitePractice::open(path, [=](const LockedPracticeKey& locked) {
            return locked.opened_by_passphrase(passphrase);
        });
    };
    EXPECT_EQ(with("guess").error().kind, StoreErrorKind::wrong_key);
    ASSERT_TRUE((*with("invented passphrase"))->change_passphrase("another", acting()));
    EXPECT_EQ(with("invented passphrase").error().kind, StoreErrorKind::wrong_key);
    EXPECT_TRUE(with("another"));
}

TEST(SqlitePractice, a_new_recovery_key_replaces_the_old_and_leaves_the_passphrase) {
    const Folder folder;
    const std::string path = folder.file("practice");
    const auto practice = new_practice(path);
    const auto opens = [&](const SecretKey& recovery) {
        return practice->locked_key().opened_by_recovery(recovery).has_value();
    };
    const SecretKey first = SecretKey::drawn();
    const SecretKey second = SecretKey::drawn();
    ASSERT_TRUE(practice->change_recovery_key(first, acting()));
    EXPECT_TRUE(opens(first));
    ASSERT_TRUE(practice->change_recovery_key(second, acting()));
    EXPECT_FALSE(opens(first));
    EXPECT_TRUE(opens(second));
    EXPECT_TRUE(practice->locked_key().opened_by_passphrase("invented passphrase"));
}

TEST(SqlitePractice, files_of_another_kind_are_not_opened_or_changed) {
    const Folder folder;
    const std::string path = folder.file("text");
    std::ofstream(path) << "time,glucose\n";
    EXPECT_EQ(SqlitePractice::open(path, unlock_for_tests).error().kind,
              StoreErrorKind::not_a_practice);
    EXPECT_EQ(all_bytes_in(folder.path()), "time,glucose\n");
    EXPECT_EQ(SqlitePractice::open(folder.file("nothing"), unlock_for_tests).error().kind,
              StoreErrorKind::not_found);
    EXPECT_EQ(SqlitePractice::create(path, key_for_tests(), locked_for_tests(), {"o", "O"}, {})
                  .error()
                  .kind,
              StoreErrorKind::exists);
}

TEST(SqlitePractice, a_later_version_is_not_touched) {
    const Folder folder;
    const std::string path = folder.file("practice");
    new_practice(path);
    {
        Database database(path, Database::Mode::existing);
        database.run("PRAGMA user_version = 99");
    }
    EXPECT_EQ(SqlitePractice::open(path, unlock_for_tests).error().kind, StoreErrorKind::too_new);
}

// A practice as version 1 of the tables made it.
void take_back_to_version_1(const std::string& path) {
    Database database(path, Database::Mode::existing);
    database.run(
        "DROP TABLE note; DROP TABLE promise; DROP TABLE acknowledgement; DROP TABLE escalation;"
        "DROP TABLE finding; DROP TABLE client_food; DROP TABLE meal_photo;"
        "DROP TABLE trial_day; DROP TABLE trial_stop; DROP TABLE trial;"
        "DROP TABLE chosen_wear; DROP TABLE told_stretch; DROP TABLE wear_fixing; DROP TABLE "
        "share_look; DROP TABLE share; "
        "DROP INDEX diary_corrected; ALTER TABLE "
        "diary_entry DROP COLUMN "
        "instead_of;"
        "ALTER TABLE diary_entry DROP COLUMN struck; PRAGMA user_version = 1");
}

TEST(SqlitePractice, an_earlier_version_is_copied_and_brought_forward) {
    const Folder folder;
    const std::string path = folder.file("practice");
    std::string before;
    std::int64_t client = 0;
    {
        const auto practice = new_practice(path);
        client = *practice->add_client("c1", "Tansy (invented)", telling_facts(), acting());
        ASSERT_TRUE(practice->bring_in(client, file_of(0, 500), WhoseFile::not_asked, acting()));
        before = exported(*practice, client);
    }
    take_back_to_version_1(path);
    const auto practice = opened_practice(path);
    EXPECT_EQ(exported(*practice, client), before);
    EXPECT_TRUE(practice->add_note(client, "now there are notes", acting()));
    EXPECT_TRUE(practice->faults()->empty());
    Database kept(path + ".before-1", Database::Mode::read_only);
    EXPECT_EQ(kept.integer("PRAGMA user_version"), 1);
    EXPECT_EQ(kept.integer("SELECT count(*) FROM client"), 1);
    EXPECT_EQ(fs::status(path + ".before-1").permissions(),
              fs::perms::owner_read | fs::perms::owner_write);
}

TEST(SqlitePractice, the_page_of_its_format_names_the_version_of_its_tables) {
    std::ifstream page(std::string(TRACEWRIGHT_SOURCE_FOLDER) + "/docs/formats/practice.md");
    const std::string text(std::istreambuf_iterator<char>(page), {});
    EXPECT_NE(text.find("(now " + std::to_string(practice_schema_version()) + ")"),
              std::string::npos);
}

TEST(SqlitePractice, none_is_made_beside_what_is_left_over_of_another) {
    const Folder folder;
    const std::string path = folder.file("practice");
    std::ofstream(path + "-wal") << "of another practice";
    const auto made = SqlitePractice::create(path, key_for_tests(), locked_for_tests(),
                                             Coach{"o1", "Sorrel (invented)"}, at_second(0));
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().kind, StoreErrorKind::exists);
    EXPECT_FALSE(fs::exists(path));
}

TEST(SqlitePractice, two_programs_see_each_others_changes) {
    const Folder folder;
    const std::string path = folder.file("practice");
    const auto first = new_practice(path);
    const auto second = opened_practice(path);
    const auto before = second->change_count();
    const auto client = first->add_client("c1", "Tansy (invented)", {}, acting());
    EXPECT_NE(second->change_count(), before);
    EXPECT_EQ(second->client(*client)->name, "Tansy (invented)");
    ASSERT_TRUE(second->bring_in(*client, file_of(0, 300), WhoseFile::not_asked, acting()));
    EXPECT_EQ(first->wears(*client)->front().wear.readings.size(), 300U);
}

TEST(SqlitePractice, what_is_read_at_one_moment_does_not_see_what_came_after_and_changes_nothing) {
    const Folder folder;
    const auto first = new_practice(folder.file("practice"));
    const auto second = opened_practice(folder.file("practice"));
    const auto client = *first->add_client("c1", "Tansy (invented)", {}, acting());
    const auto seen = first->reading([&]() -> Stored<std::size_t> {
        EXPECT_EQ(first->client_numbers()->size(), 1U);
        EXPECT_TRUE(second->add_client("c2", "Yarrow (invented)", {}, acting()));
        auto renamed = *second->client(client);
        renamed.name = "Ragwort (invented)";
        EXPECT_TRUE(second->change_client(renamed, acting()));
        EXPECT_EQ(first->client_line(client)->name, "Tansy (invented)");
        EXPECT_FALSE(first->add_note(client, "a note", acting()));
        return first->client_numbers()->size();
    });
    EXPECT_EQ(seen, 1U);
    EXPECT_EQ(first->client_numbers()->size(), 2U);
    EXPECT_EQ(first->client_line(client)->name, "Ragwort (invented)");
    EXPECT_TRUE(first->notes(client)->empty());
}

TEST(SqlitePractice, two_programs_writing_at_once_lose_nothing) {
    const Folder folder;
    const std::string path = folder.file("practice");
    const auto client = *new_practice(path)->add_client("c1", "Tansy (invented)", {}, acting());
    const auto write = [&](int first) {
        const auto practice = opened_practice(path);
        for (int i = 0; i < 40; ++i) {
            EXPECT_TRUE(practice->add_note(client, "note " + std::to_string(first + i), acting()));
        }
    };
    std::thread one(write, 0);
    std::thread two(write, 1000);
    one.join();
    two.join();
    EXPECT_EQ(opened_practice(path)->notes(client)->size(), 80U);
}

// T25: after erasure no byte of the client's is found in any file of the practice.
TEST(SqlitePractice, erasure_reaches_pages_log_and_free_space) {
    const Folder folder;
    const std::string path = folder.file("practice");
    {
        new_practice(path);
        take_back_to_version_1(path);
    }
    const auto practice = opened_practice(path);  // leaves a copy from before the migration
    const auto client = telling_client(*practice);
    const auto other = *practice->add_client("c2", "Yarrow (invented)", {}, acting());
    ASSERT_TRUE(
        practice->bring_in(other, file_of(50'000, 600, 300, 2), WhoseFile::not_asked, acting()));

    // The client's bytes as they lie on disk: every block and every sealed text.
    std::vector<std::string> bytes_of_client;
    {
        Database database(path, Database::Mode::read_only);
        const auto take = [&](const char* sql) {
            Statement all(database, sql);
            for (all.with(client); all.step();) {
                const auto blob = all.blob(0);
                bytes_of_client.emplace_back(blob.begin(), blob.end());
            }
        };
        take("SELECT block FROM trace_block WHERE client = ?");
        take("SELECT sealed_entry FROM diary_entry WHERE client = ?");
        take("SELECT sealed_text FROM note WHERE client = ?");
        take("SELECT sealed_fixing FROM wear_fixing JOIN wear ON id = wear WHERE client = ?");
        take("SELECT sealed_facts FROM client WHERE id = ?");
        take("SELECT sealed_name FROM client WHERE id = ?");
    }
    ASSERT_GT(bytes_of_client.size(), 25U);
    const std::string before = all_bytes_in(folder.path());
    for (const std::string& bytes : bytes_of_client) {
        // A long text may lie in pieces on several pages; its first 64 bytes lie together.
        ASSERT_NE(before.find(bytes.substr(0, 64)), std::string::npos);
    }

    ASSERT_TRUE(practice->erase_client(client, acting(5)));
    const std::string after = all_bytes_in(folder.path());
    for (const std::string& bytes : bytes_of_client) {
        EXPECT_EQ(after.find(bytes.substr(0, 24)), std::string::npos);
    }
    for (const char* word : personal) {
        EXPECT_EQ(after.find(word), std::string::npos) << word;
    }
    EXPECT_FALSE(fs::exists(path + ".before-1"));
    EXPECT_EQ(practice->wears(other)->front().wear.readings.size(), 600U);
    EXPECT_TRUE(practice->faults()->empty());
}

TEST(SqlitePractice, an_erasure_cut_short_is_finished_when_the_practice_is_next_opened) {
    const Folder folder;
    const std::string path = folder.file("practice");
    {
        const auto practice = new_practice(path);
        const auto client = telling_client(*practice);
        Database database(path, Database::Mode::read_only);
        Statement mark(database, "SELECT mark FROM client WHERE id = ?");
        ASSERT_TRUE(mark.with(client).step());
        ClientMark bytes{};
        std::ranges::copy(mark.blob(0), bytes.begin());
        ASSERT_TRUE(ErasureList(erasure_list_path(path)).add({&bytes, 1}));  // and no further
    }
    EXPECT_TRUE(opened_practice(path)->clients()->empty());
}

TEST(Backup, is_encrypted_restores_to_the_same_and_opens_by_either_key) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    const auto client = telling_client(*practice);
    const std::string before = exported(*practice, client);
    fs::create_directory(folder.file("elsewhere"));
    const std::string backup = folder.file("elsewhere/backup");
    const auto facts = write_backup(*practice, backup, acting());
    ASSERT_TRUE(facts) << facts.error().sentence;
    EXPECT_EQ(facts->clients, 1U);
    const std::string bytes = all_bytes_in(folder.file("elsewhere"));
    EXPECT_EQ(bytes.find("SQLite format"), std::string::npos);
    EXPECT_EQ(bytes.find("trace_block"), std::string::npos);

    const std::string target = folder.file("elsewhere/practice");
    const auto restored = restore_backup(backup, target, unlock_for_tests);
    ASSERT_TRUE(restored) << restored.error().sentence;
    const auto again = opened_practice(target);
    EXPECT_EQ(exported(*again, client), before);
    EXPECT_TRUE(again->faults()->empty());
    EXPECT_EQ(restore_backup(backup, target, unlock_for_tests).error().kind,
              StoreErrorKind::exists);
}

// Task T21, revocable at once: a backup knows of nothing that was revoked since.
TEST(Backup, opens_no_share_again_when_it_is_restored) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    const auto client = telling_client(*practice);
    Share share;
    share.recipient = "Reed, the spouse (invented)";
    share.purpose = "to help at night";
    share.until = at_second(30 * 86'400);
    const auto token = *hash_of_share_token(drawn_share_token());
    const auto number = practice->give_share(client, share, token, acting(10));
    ASSERT_TRUE(number);
    const std::string backup = folder.file("backup");
    ASSERT_TRUE(write_backup(*practice, backup, acting(20)));
    ASSERT_TRUE(practice->revoke_share(client, *number, acting(30)));
    const auto restored = restore_backup(backup, folder.file("restored"), unlock_for_tests);
    ASSERT_TRUE(restored) << restored.error().sentence;
    EXPECT_EQ(restored->shares_closed, 1U);
    const auto opened = opened_practice(folder.file("restored"))->share_opened_by(token);
    ASSERT_TRUE(opened);
    ASSERT_TRUE(opened->record.share.revoked_at);
    EXPECT_LE(*opened->record.share.revoked_at, at_second(20));
}

// SQLite would play the log of another practice back into this one and destroy it.
TEST(Backup, is_not_restored_beside_what_is_left_over_of_another_practice) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    telling_client(*practice);
    const std::string backup = folder.file("backup");
    ASSERT_TRUE(write_backup(*practice, backup, acting()));
    const std::string target = folder.file("restored");
    for (const char* ending : {"-wal", "-shm", "-journal"}) {
        std::ofstream(target + ending) << "of another practice";
        const auto restored = restore_backup(backup, target, unlock_for_tests);
        ASSERT_FALSE(restored);
        EXPECT_EQ(restored.error().kind, StoreErrorKind::exists);
        EXPECT_NE(restored.error().sentence.find(target + ending), std::string::npos);
        EXPECT_FALSE(fs::exists(target));
        fs::remove(target + ending);
    }
    EXPECT_TRUE(restore_backup(backup, target, unlock_for_tests));
}

TEST(Backup, that_was_changed_cut_short_or_is_another_file_is_refused) {
    const Folder folder;
    const auto practice = new_practice(folder.file("practice"));
    telling_client(*practice);
    const std::string backup = folder.file("backup");
    ASSERT_TRUE(write_backup(*practice, backup, acting()));
    const auto whole = *read_whole_file(backup);
    const std::string target = folder.file("restored");
    const auto refused = [&](std::vector<std::uint8_t> bytes) {
        EXPECT_TRUE(write_whole_file(folder.file("bad"), bytes));
        const auto result = restore_backup(folder.file("bad"), target, unlock_for_tests);
        return !result && !fs::exists(target);
    };
    for (std::size_t at = 0; at < whole.size(); at += 997) {
        auto changed = whole;
        changed[at] = static_cast<std::uint8_t>(changed[at] ^ 0x10U);
        EXPECT_TRUE(refused(changed)) << at;
    }
    for (std::size_t size = 0; size < whole.size(); size += 4099) {
        EXPECT_TRUE(refused({whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(size)}))
            << size;
    }
    auto longer = whole;
    longer.push_back(0);
    EXPECT_TRUE(refused(longer));
}

TEST(Backup, restoring_an_older_one_erases_again_before_it_opens) {
    const Folder folder;
    const std::string path = folder.file("practice");
    const auto practice = new_practice(path);
    const auto client = telling_client(*practice);
    const auto other = *practice->add_client("c2", "Yarrow (invented)", {}, acting());
    const std::string backup = folder.file("backup");
    ASSERT_TRUE(write_backup(*practice, backup, acting()));
    ASSERT_TRUE(practice->erase_client(client, acting()));

    const std::string target = folder.file("restored");
    const auto restored =
        restore_backup(backup, target, unlock_for_tests, {erasure_list_path(path)});
    ASSERT_TRUE(restored) << restored.error().sentence;
    EXPECT_EQ(restored->clients, 1U);
    const auto again = opened_practice(target);
    EXPECT_EQ(again->client_called("c1").error().kind, StoreErrorKind::not_found);
    EXPECT_TRUE(again->client(other));
}

}  // namespace
}  // namespace tracewright
