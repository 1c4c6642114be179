// What is left of a practice when the program is killed, the disk is full or may not be written.
// TRACEWRIGHT_KILLS: how many times to kill (else 50).
#include "store/client_export.hpp"
#include "store/diary_book.hpp"
#include "store/meal_photo_book.hpp"
#include "store/practice_for_tests.hpp"

#include <sys/resource.h>
#include <sys/wait.h>

#include <csignal>
#include <cstdlib>
#include <random>

namespace tracewright {
namespace {

namespace fs = std::filesystem;

int kills() {
    const char* wanted = std::getenv("TRACEWRIGHT_KILLS");
    return wanted != nullptr ? std::atoi(wanted) : 50;
}

/// A process of its own that says through a pipe what it has done.
class Worker {
  public:
    template <typename Work>
    explicit Worker(Work work) {
        if (::pipe(pipe_) != 0) {
            throw std::runtime_error("no pipe");
        }
        process_ = ::fork();
        if (process_ == 0) {
            ::close(pipe_[0]);
            const int code = work([this](char done) { return ::write(pipe_[1], &done, 1) == 1; });
            ::_exit(code);
        }
        ::close(pipe_[1]);
    }
    ~Worker() { ::close(pipe_[0]); }
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void kill_after(std::chrono::microseconds time) {
        ::usleep(static_cast<useconds_t>(time.count()));
        ::kill(process_, SIGKILL);
        ::waitpid(process_, nullptr, 0);
    }
    int exit_code() {
        int status = 0;
        ::waitpid(process_, &status, 0);
        return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    }
    /// All that was said done before the end.
    std::string said() {
        std::string all;
        char done = 0;
        while (::read(pipe_[0], &done, 1) == 1) {
            all += done;
        }
        return all;
    }

  private:
    int pipe_[2]{};
    pid_t process_ = 0;
};

// What the deeds n = 0, 1, 2, ... leave: an import of a day, its meals, a photo of one, a
// note, an undo, a backup.
struct Left {
    std::size_t readings = 0;
    std::size_t meals = 0;
    std::size_t photos = 0;
    std::size_t notes = 0;
    bool operator==(const Left&) const = default;
};

enum class Deed { import, photo, note, import_more, undo, backup };

Deed deed(std::size_t n) {
    return static_cast<Deed>(n % 6);
}

void after(std::size_t n, Left& left) {
    switch (deed(n)) {
        case Deed::import:
        case Deed::import_more:
            left.readings += 288;
            left.meals += 3;
            break;
        case Deed::photo:
            ++left.photos;
            break;
        case Deed::note:
            ++left.notes;
            break;
        case Deed::undo:
            left.readings -= 288;
            left.meals -= 3;
            break;
        case Deed::backup:
            break;
    }
}

// Of the last meal that the import before brought.
bool photo_added(SqlitePractice& practice, std::int64_t client, std::int64_t day) {
    const auto meals =
        DiaryBook(practice).entries(client, {at_second(day - 86'400), at_second(day)});
    return meals && !meals->empty() &&
           MealPhotoBook(practice)
               .add(client, meals->back().id, MealPhoto{std::string(50'000, 'j')}, acting())
               .has_value();
}

bool done(SqlitePractice& practice, std::int64_t client, std::size_t n, const std::string& backup) {
    const auto day = static_cast<std::int64_t>(n) * 86'400;
    switch (deed(n)) {
        case Deed::import:
        case Deed::import_more:
            return practice
                .bring_in(client, with_meals(file_of(day, 288), 3), WhoseFile::not_asked, acting())
                .has_value();
        case Deed::photo:
            return photo_added(practice, client, day);
        case Deed::note:
            return practice.add_note(client, "a note", acting()).has_value();
        case Deed::undo:
            return practice.undo(client, acting()).has_value();
        case Deed::backup:
            return write_backup(practice, backup, acting()).has_value();
    }
    return false;
}

Left left_in(SqlitePractice& practice, std::int64_t client) {
    Left left;
    const auto wears = practice.wears(client);
    for (const StoredWear& wear : *wears) {
        left.readings += wear.wear.readings.size();
    }
    left.meals = practice.diary(client)->size();
    left.photos = MealPhotoBook(practice).lines(client)->size();
    left.notes = practice.notes(client)->size();
    return left;
}

TEST(Killed, nothing_acknowledged_is_lost_and_nothing_is_half_done) {
    const Folder folder;
    const std::string path = folder.file("practice");
    const std::string backup = folder.file("backup");
    const auto client = *new_practice(path)->add_client("c1", "Tansy (invented)", {}, acting());
    std::mt19937 draw(20261125);
    Left before;
    std::size_t next = 0;
    std::size_t cut_short = 0;
    std::uint32_t longest =
        40'000;  // microseconds; more while the machine is too slow for any deed
    for (int round = 0; round < kills(); ++round) {
        Worker worker([&](auto say) {
            const auto opened = SqlitePractice::open(path, unlock_for_tests);
            for (std::size_t n = next; opened && n < next + 200; ++n) {
                if (!done(**opened, client, n, backup) || !say('d')) {
                    return 1;
                }
            }
            return 0;
        });
        worker.kill_after(std::chrono::microseconds{draw() % longest});
        const std::size_t acknowledged = worker.said().size();
        longest = acknowledged > 0 ? 40'000 : std::min(2 * longest, 640'000U);
        for (std::size_t i = 0; i < acknowledged; ++i) {
            after(next++, before);
        }
        const auto practice = opened_practice(path);
        ASSERT_TRUE(practice);
        const auto faults = practice->faults();
        ASSERT_TRUE(faults);
        ASSERT_TRUE(faults->empty()) << faults->front();
        const Left found = left_in(*practice, client);
        Left one_more = before;
        after(next, one_more);
        if (found == one_more && !(found == before)) {
            before = one_more;  // done, but killed before it could say so
            ++next;
        }
        ASSERT_EQ(found, before) << "round " << round << ", " << next << " deeds";
        cut_short += acknowledged > 0 ? 1U : 0U;
        if (fs::exists(backup)) {
            const auto restored = restore_backup(backup, folder.file("restored"), unlock_for_tests);
            ASSERT_TRUE(restored) << restored.error().sentence;
            fs::remove(folder.file("restored"));
        }
    }
    EXPECT_GT(cut_short, 0U);  // else the kills came before anything was done
    EXPECT_GT(next, 5U);
}

TEST(Killed, a_migration_cut_short_is_made_again) {
    const Folder folder;
    const std::string path = folder.file("practice");
    std::int64_t client = 0;
    {
        const auto practice = new_practice(path);
        client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
        ASSERT_TRUE(practice->bring_in(client, file_of(0, 2000), WhoseFile::not_asked, acting()));
    }
    std::mt19937 draw(7);
    for (int round = 0; round < kills() / 2; ++round) {
        {
            Database database(path, Database::Mode::existing);
            database.run(
                "DROP TABLE note; DROP TABLE promise; DROP TABLE acknowledgement;"
                "DROP TABLE escalation; DROP TABLE finding; DROP TABLE client_food;"
                "DROP TABLE meal_photo;"
                "DROP TABLE trial_day; DROP TABLE trial_stop; DROP TABLE trial;"
                "DROP TABLE chosen_wear; DROP TABLE told_stretch; DROP TABLE wear_fixing; DROP "
                "TABLE share_look; DROP "
                "TABLE share; DROP INDEX diary_corrected;"
                "ALTER TABLE diary_entry DROP COLUMN instead_of;"
                "ALTER TABLE diary_entry DROP COLUMN struck; PRAGMA user_version = 1");
        }
        Worker worker([&](auto say) {
            const auto opened = SqlitePractice::open(path, unlock_for_tests);
            return opened && say('o') ? 0 : 1;
        });
        worker.kill_after(std::chrono::microseconds{draw() % 12'000});
        const auto practice = opened_practice(path);
        ASSERT_TRUE(practice);
        ASSERT_TRUE(practice->faults()->empty());
        ASSERT_EQ(practice->wears(client)->front().wear.readings.size(), 2000U);
        ASSERT_TRUE(practice->notes(client));
        Database kept(path + ".before-1", Database::Mode::read_only);
        ASSERT_EQ(kept.text("PRAGMA integrity_check"), "ok");
    }
}

std::string exported(SqlitePractice& practice, std::int64_t client) {
    std::string all;
    const auto holdings = practice.holdings(client, acting());
    for (const auto& file : client_export(*holdings)) {
        all += file.bytes;
    }
    return all;
}

TEST(FullDisk, is_told_and_nothing_is_changed) {
    const Folder folder;
    const std::string path = folder.file("practice");
    std::int64_t client = 0;
    std::string before;
    {
        const auto practice = new_practice(path);
        client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
        ASSERT_TRUE(practice->bring_in(client, file_of(0, 2000), WhoseFile::not_asked, acting()));
        before = exported(*practice, client);
    }
    Worker worker([&](auto) {
        const auto opened = SqlitePractice::open(path, unlock_for_tests);
        if (!opened) {
            return 2;
        }
        // No file of this process may grow past where the practice is now: as if the disk were
        // full.
        const rlimit most{fs::file_size(path) / 2, RLIM_INFINITY};
        ::signal(SIGXFSZ, SIG_IGN);
        ::setrlimit(RLIMIT_FSIZE, &most);
        const auto outcome =
            (*opened)->bring_in(client, with_meals(file_of(9'000'000, 100'000, 60), 900),
                                WhoseFile::not_asked, acting());
        const auto backup = write_backup(**opened, folder.file("backup"), acting());
        return outcome || outcome.error().kind != StoreErrorKind::no_room ? 3
               : backup || fs::exists(folder.file("backup"))              ? 4
                                                                          : 0;
    });
    EXPECT_EQ(worker.exit_code(), 0);
    const auto practice = opened_practice(path);
    EXPECT_EQ(exported(*practice, client), before);
    EXPECT_TRUE(practice->faults()->empty());
}

TEST(NoRightToWrite, is_told_and_nothing_is_changed) {
    if (::geteuid() != 0) {
        GTEST_SKIP() << "needs the superuser to become somebody without rights";
    }
    const Folder folder;
    const std::string path = folder.file("practice");
    const auto client = *new_practice(path)->add_client("c1", "Tansy (invented)", {}, acting());
    constexpr auto look = fs::perms::group_read | fs::perms::others_read;
    fs::permissions(folder.path(),
                    fs::perms::owner_all | look | fs::perms::group_exec | fs::perms::others_exec);
    fs::permissions(path, fs::perms::owner_all | look);
    Worker worker([&](auto) {
        constexpr uid_t nobody = 65'534;
        if (::setuid(nobody) != 0) {
            return 2;
        }
        const auto opened = SqlitePractice::open(path, unlock_for_tests);
        return opened ? 1 : 10 + static_cast<int>(opened.error().kind);
    });
    EXPECT_EQ(worker.exit_code(), 10 + static_cast<int>(StoreErrorKind::read_only));
    EXPECT_TRUE(opened_practice(path)->client(client));
}

}  // namespace
}  // namespace tracewright
