#include "store/sqlite_practice.hpp"

#include "access/coach_lock.hpp"
#include "store/left_over.hpp"
#include "store/practice_schema.hpp"
#include "store/practice_values.hpp"
#include "store/whole_file.hpp"

#include <linux/magic.h>
#include <sys/stat.h>
#include <sys/vfs.h>

#include <algorithm>
#include <array>
#include <filesystem>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

// Not in every <linux/magic.h>. From memory: the kernel's own constants.
constexpr std::uint32_t cifs_magic = 0xFF534D42;
constexpr std::uint32_t smb2_magic = 0xFE534D42;
constexpr std::uint32_t ceph_magic = 0x00C36400;

// A network file system's locks can't be relied on, and the log's shared memory not at all.
Stored<void> fit_file_system(const std::string& path) {
    struct statfs facts {};
    const std::string folder = fs::path(path).parent_path().string();
    if (::statfs(folder.empty() ? "." : folder.c_str(), &facts) != 0) {
        return {};  // opening it will say what is wrong
    }
    const auto kind = static_cast<std::uint32_t>(facts.f_type);
    for (const std::uint32_t network :
         {std::uint32_t{NFS_SUPER_MAGIC}, std::uint32_t{SMB_SUPER_MAGIC}, cifs_magic, smb2_magic,
          ceph_magic, std::uint32_t{AFS_SUPER_MAGIC}, std::uint32_t{CODA_SUPER_MAGIC},
          std::uint32_t{V9FS_MAGIC}}) {
        if (kind == network) {
            return store_error(StoreErrorKind::unfit_file_system,
                               "found a network file system, expected a disk of this machine: two "
                               "programs could not be kept apart there");
        }
    }
    return {};
}

void set_up(Database& database) {
    if (database.text("PRAGMA journal_mode = WAL") != "wal") {
        throw DatabaseFailure(0, "the write-ahead log can't be used here");
    }
    set_up_connection(database);
}

constexpr const char* sweep_due_name = "sweep_due";
constexpr std::size_t shortest_passphrase = 10;

void remove_quietly(const std::string& path) {
    std::error_code none;
    fs::remove(path, none);
}

}  // namespace

SqlitePractice::SqlitePractice(std::string path, std::unique_ptr<Database> database, SecretKey key)
    : path_(std::move(path)),
      database_(std::move(database)),
      key_(std::move(key)),
      seal_(key_),
      coaches_(*database_, seal_),
      clients_(*database_, seal_),
      trace_(*database_),
      diary_(*database_, seal_),
      imports_(*database_, seal_, trace_, diary_),
      records_(*database_, seal_),
      foods_(*database_, seal_),
      trials_(*database_, seal_),
      fixings_(*database_, seal_),
      shares_(*database_, seal_),
      stretches_(*database_, seal_),
      audit_(*database_) {}

Stored<std::unique_ptr<SqlitePractice>> SqlitePractice::create(const std::string& path,
                                                               const SecretKey& key,
                                                               const LockedPracticeKey& locked,
                                                               const Coach& owner, Instant at) {
    std::error_code none;
    if (fs::exists(path, none)) {
        return store_error(StoreErrorKind::exists,
                           path + ": found a file here already, expected none");
    }
    if (const auto clear = nothing_left_over_beside(path); !clear) {
        return tl::make_unexpected(clear.error());
    }
    if (const auto fit = fit_file_system(path); !fit) {
        return tl::make_unexpected(fit.error());
    }
    // Made whole beside its place, so that a practice is there with all it needs or not at all.
    const std::string half = path + ".half";
    remove_quietly(half);
    const auto made = caught([&]() -> Stored<void> {
        Database database(half, Database::Mode::create);
        ::chmod(half.c_str(), S_IRUSR | S_IWUSR);
        database.run("PRAGMA journal_mode = MEMORY");
        Transaction all_or_nothing(database);
        make_practice_tables(database);
        set_practice_value(database, locked_key_name, locked.stored());
        const Seal seal(key);
        Coach first = owner;
        first.role = CoachRole::owner;
        const std::int64_t coach = CoachTable(database, seal).add(first, at);
        AuditTable(database).add({coach, at}, "practice_made");
        all_or_nothing.commit();
        return {};
    });
    if (!made) {
        remove_quietly(half);
        return tl::make_unexpected(made.error());
    }
    if (const auto placed = put_in_place(half, path); !placed) {
        remove_quietly(half);
        return tl::make_unexpected(placed.error());
    }
    return open(path, [&](const LockedPracticeKey&) -> tl::expected<SecretKey, std::string> {
        return key.copy();
    });
}

Stored<std::unique_ptr<SqlitePractice>> SqlitePractice::open(const std::string& path,
                                                             const Unlocking& unlocking) {
    using Opened = Stored<std::unique_ptr<SqlitePractice>>;
    std::error_code error;
    if (!fs::is_regular_file(path, error)) {
        if (error == std::errc::permission_denied) {
            return store_error(StoreErrorKind::read_only,
                               path + ": found no right to look here, expected the practice");
        }
        return store_error(StoreErrorKind::not_found,
                           path + ": found no practice here, expected one made by init");
    }
    if (const auto fit = fit_file_system(path); !fit) {
        return tl::make_unexpected(fit.error());
    }
    return caught([&]() -> Opened {
        auto database = std::make_unique<Database>(path, Database::Mode::existing);
        if (const auto version = practice_version(*database); !version) {
            return tl::make_unexpected(version.error());
        }
        set_up(*database);
        if (const auto forward = bring_tables_forward(*database, path); !forward) {
            return tl::make_unexpected(forward.error());
        }
        const auto locked = LockedPracticeKey::read(practice_value(*database, locked_key_name));
        if (!locked) {
            return store_error(StoreErrorKind::broken, locked.error());
        }
        auto key = unlocking(*locked);
        if (!key) {
            return store_error(StoreErrorKind::wrong_key, key.error());
        }
        std::unique_ptr<SqlitePractice> practice(
            new SqlitePractice(path, std::move(database), std::move(*key)));
        if (const auto finished = practice->finish_erasures(); !finished) {
            return tl::make_unexpected(finished.error());
        }
        return practice;
    });
}

LockedPracticeKey SqlitePractice::locked_key() {
    return *LockedPracticeKey::read(practice_value(*database_, locked_key_name));
}

Stored<void> SqlitePractice::change_passphrase(std::string_view passphrase, const Acting& acting) {
    return changing(acting, Needs::an_owner, [&]() -> Stored<void> {
        const auto locked = locked_key().with_passphrase(key_, passphrase);
        if (!locked) {
            return store_error(StoreErrorKind::refused, locked.error());
        }
        set_practice_value(*database_, locked_key_name, locked->stored());
        audit_.add(acting, "passphrase_changed");
        return {};
    });
}

Stored<void> SqlitePractice::change_recovery_key(const SecretKey& recovery, const Acting& acting) {
    return changing(acting, Needs::an_owner, [&]() -> Stored<void> {
        const auto locked = locked_key().with_recovery(key_, recovery);
        if (!locked) {
            return store_error(StoreErrorKind::refused, locked.error());
        }
        set_practice_value(*database_, locked_key_name, locked->stored());
        audit_.add(acting, "recovery_key_changed");
        return {};
    });
}

Stored<void> SqlitePractice::set_coach_passphrase(std::int64_t coach, std::string_view passphrase,
                                                  const Acting& acting) {
    if (passphrase.size() < shortest_passphrase) {
        return store_error(StoreErrorKind::refused,
                           "found a passphrase of fewer than 10 signs, expected a longer one: "
                           "several words are easy to keep in mind and hard to guess");
    }
    // Costly on purpose, so not while other programs wait for the write lock.
    const auto lock = CoachLock::locked(key_, coach, passphrase, locked_key().work());
    if (!lock) {
        return store_error(StoreErrorKind::refused, lock.error());
    }
    const Needs needs = coach == acting.coach ? Needs::a_look : Needs::an_owner;
    return changing(acting, needs, [&]() -> Stored<void> {
        const auto known = coaches_.coaches();
        if (std::ranges::none_of(known, [&](const auto& one) { return one.first == coach; })) {
            return store_error(StoreErrorKind::not_found, "found no such coach in this practice");
        }
        set_practice_value(*database_, coach_lock_name(coach), lock->stored());
        audit_.add(acting, "coach_passphrase_changed", std::nullopt, coach);
        return {};
    });
}

Stored<std::vector<std::uint8_t>> SqlitePractice::image() {
    return caught([&]() -> Stored<std::vector<std::uint8_t>> {
        Database copy("", Database::Mode::in_memory);
        database_->copy_to(copy);
        auto bytes = copy.bytes();
        // The file's head says 'write-ahead log', which a database in memory can't have: bytes 18
        // and 19 say 'rollback journal' instead. Source: SQLite, 'Database File Format', 1.3.3.
        bytes.at(18) = 1;
        bytes.at(19) = 1;
        return bytes;
    });
}

Stored<void> SqlitePractice::note_backup(const Acting& acting) {
    return changing(acting, Needs::a_look, [&]() -> Stored<void> {
        audit_.add(acting, "backup_made");
        return {};
    });
}

Stored<void> SqlitePractice::note_deed(const std::string& deed, const Acting& acting) {
    return changing(acting, Needs::a_look, [&]() -> Stored<void> {
        audit_.add(acting, deed);
        return {};
    });
}

Stored<std::vector<AuditLine>> SqlitePractice::audit_since(std::int64_t line) {
    return reading([&]() -> Stored<std::vector<AuditLine>> { return audit_.since(line); });
}

Stored<std::vector<AuditLine>> SqlitePractice::audit_before(std::int64_t line, std::int64_t most,
                                                            std::optional<std::int64_t> client) {
    return reading(
        [&]() -> Stored<std::vector<AuditLine>> { return audit_.before(line, most, client); });
}

Stored<std::optional<AuditLine>> SqlitePractice::last_deed(const std::string& deed) {
    return reading([&]() -> Stored<std::optional<AuditLine>> { return audit_.last_of(deed); });
}

std::int64_t SqlitePractice::change_count() {
    // data_version tells other connections' changes, total_changes() our own.
    return database_->integer("PRAGMA data_version") + database_->integer("SELECT total_changes()");
}

Stored<std::string> SqlitePractice::place(std::int64_t client) {
    auto place = clients_.place_of(client);
    if (!place) {
        return no_such_client();
    }
    return std::move(*place);
}

Stored<void> SqlitePractice::finish_erasures() {
    const auto marks = ErasureList(erasure_list_path(path_)).marks();
    if (!marks) {
        return tl::make_unexpected(marks.error());
    }
    std::vector<std::int64_t> left;
    for (const ClientMark& mark : *marks) {
        if (const auto client = clients_.client_marked(mark)) {
            left.push_back(*client);
        }
    }
    if (!left.empty()) {
        Transaction all_or_nothing(*database_);
        for (const std::int64_t client : left) {
            clients_.remove(client);
            audit_.forget(client);
        }
        set_practice_value(*database_, sweep_due_name, {});
        all_or_nothing.commit();
    }
    const bool due =
        database_->integer("SELECT count(*) FROM practice WHERE name = 'sweep_due'") > 0;
    return due ? sweep() : Stored<void>{};
}

Stored<void> SqlitePractice::erase_client(std::int64_t client, const Acting& acting) {
    const auto erased = changing(acting, Needs::an_owner, [&]() -> Stored<void> {
        const auto mark = clients_.mark_of(client);
        if (!mark) {
            return no_such_client();
        }
        // Listed first: what is cut short after this is finished when the practice is next opened.
        if (auto listed = ErasureList(erasure_list_path(path_)).add({&*mark, 1}); !listed) {
            return listed;
        }
        clients_.remove(client);
        audit_.forget(client);
        audit_.add(acting, "client_erased");
        set_practice_value(*database_, sweep_due_name, {});
        return {};
    });
    return erased ? sweep() : erased;
}

// Deleted rows are overwritten at once (secure_delete); this takes them out of the log, the free
// pages and the copies kept before migrations.
Stored<void> SqlitePractice::sweep() {
    return caught([&]() -> Stored<void> {
        database_->run("VACUUM");
        Statement checkpoint(*database_, "PRAGMA wal_checkpoint(TRUNCATE)");
        if (checkpoint.step() && checkpoint.integer(0) != 0) {
            return store_error(StoreErrorKind::busy,
                               "the client is erased; another program is still reading, so the "
                               "log is emptied when the practice is next opened");
        }
        checkpoint.with();
        const fs::path here(path_);
        const std::string before = here.filename().string() + ".before-";
        std::error_code none;
        const fs::path folder = here.has_parent_path() ? here.parent_path() : fs::path(".");
        for (const auto& entry : fs::directory_iterator(folder, none)) {
            if (entry.path().filename().string().starts_with(before)) {
                fs::remove(entry.path(), none);
            }
        }
        database_->run("DELETE FROM practice WHERE name = 'sweep_due'");
        return {};
    });
}

}  // namespace tracewright
