#include "store/practice_backup.hpp"

#include "access/sealed_stream.hpp"
#include "store/left_over.hpp"
#include "store/practice_schema.hpp"
#include "store/whole_file.hpp"

#include <algorithm>
#include <filesystem>
#include <string_view>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view magic = "TWBACKUP1\n";
constexpr std::uint64_t backup_key_number = 3;
constexpr std::string_view backup_purpose = "backup00";

// What stands in the clear in front: the kind of file, and the locked key behind its length.
std::vector<std::uint8_t> head_of(const LockedPracticeKey& locked) {
    std::vector<std::uint8_t> head(magic.begin(), magic.end());
    const auto key = locked.stored();
    head.push_back(static_cast<std::uint8_t>(key.size() & 0xFFU));
    head.push_back(static_cast<std::uint8_t>(key.size() >> 8U));
    head.insert(head.end(), key.begin(), key.end());
    return head;
}

struct Opened {
    SecretKey key;
    std::vector<std::uint8_t> database;
};

Stored<Opened> opened_backup(std::span<const std::uint8_t> file, const Unlocking& unlocking) {
    const auto not_one = store_error(StoreErrorKind::not_a_practice,
                                     "found a file that is no backup, expected one made by backup");
    const std::size_t key_at = magic.size() + 2;
    if (file.size() < key_at || !std::equal(magic.begin(), magic.end(), file.begin())) {
        return not_one;
    }
    const std::size_t key_bytes = file[magic.size()] + (std::size_t{file[magic.size() + 1]} << 8U);
    if (file.size() < key_at + key_bytes) {
        return not_one;
    }
    const auto locked = LockedPracticeKey::read(file.subspan(key_at, key_bytes));
    if (!locked) {
        return store_error(StoreErrorKind::broken, locked.error());
    }
    auto key = unlocking(*locked);
    if (!key) {
        return store_error(StoreErrorKind::wrong_key, key.error());
    }
    auto database = opened_stream(file.subspan(key_at + key_bytes),
                                  key->derived(backup_key_number, backup_purpose),
                                  file.first(key_at + key_bytes));
    if (!database) {
        return store_error(StoreErrorKind::broken, database.error());
    }
    return Opened{std::move(*key), std::move(*database)};
}

Stored<std::size_t> clients_in_sound(Database& database) {
    const std::string verdict = database.text("PRAGMA integrity_check(1)");
    if (verdict != "ok") {
        return store_error(StoreErrorKind::broken,
                           "found a backup whose database is in disorder: " + verdict);
    }
    if (const auto version = practice_version(database); !version) {
        return tl::make_unexpected(version.error());
    }
    return static_cast<std::size_t>(database.integer("SELECT count(*) FROM client"));
}

Stored<std::vector<ClientMark>> marks_of(const std::vector<std::string>& lists) {
    std::vector<ClientMark> marks;
    for (const std::string& path : lists) {
        const auto listed = ErasureList(path).marks();
        if (!listed) {
            return tl::make_unexpected(listed.error());
        }
        marks.insert(marks.end(), listed->begin(), listed->end());
    }
    return marks;
}

tl::unexpected<StoreError> does_not_read_back() {
    return store_error(StoreErrorKind::broken,
                       "found that the backup does not read back as it was written: do not rely on "
                       "it");
}

void erase_again(Database& database, const std::vector<ClientMark>& marks) {
    database.run("PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON");
    Statement audit(database,
                    "DELETE FROM audit WHERE client IN (SELECT id FROM client WHERE mark = ?)");
    Statement client(database, "DELETE FROM client WHERE mark = ?");
    for (const ClientMark& mark : marks) {
        audit.with(std::span<const std::uint8_t>(mark)).run();
        client.with(std::span<const std::uint8_t>(mark)).run();
    }
}

}  // namespace

Stored<SealedBackup> sealed_backup(SqlitePractice& practice) {
    return caught([&]() -> Stored<SealedBackup> {
        const auto image = practice.image();
        if (!image) {
            return tl::make_unexpected(image.error());
        }
        SealedBackup backup{head_of(practice.locked_key())};
        const auto stream = sealed_stream(
            *image, practice.key().derived(backup_key_number, backup_purpose), backup.bytes);
        backup.bytes.insert(backup.bytes.end(), stream.begin(), stream.end());
        const auto opened = opened_backup(
            backup.bytes, [&](const LockedPracticeKey&) -> tl::expected<SecretKey, std::string> {
                return practice.key().copy();
            });
        if (!opened || opened->database != *image) {
            return does_not_read_back();
        }
        Database copy("", Database::Mode::in_memory);
        copy.take_bytes(opened->database);
        const auto clients = clients_in_sound(copy);
        if (!clients) {
            return tl::make_unexpected(clients.error());
        }
        backup.clients = *clients;
        return backup;
    });
}

Stored<BackupFacts> write_backup(SqlitePractice& practice, const std::string& path,
                                 const Acting& acting) {
    return caught([&]() -> Stored<BackupFacts> {
        const auto backup = sealed_backup(practice);
        if (!backup) {
            return tl::make_unexpected(backup.error());
        }
        if (const auto written = write_whole_file(path, backup->bytes); !written) {
            return tl::make_unexpected(written.error());
        }
        const auto again = read_whole_file(path);
        if (!again) {
            return tl::make_unexpected(again.error());
        }
        if (*again != backup->bytes) {
            return does_not_read_back();
        }
        const auto erased = marks_of({erasure_list_path(practice.path())});
        if (!erased) {
            return tl::make_unexpected(erased.error());
        }
        if (const auto listed = ErasureList(erasure_list_path(path)).add(*erased); !listed) {
            return tl::make_unexpected(listed.error());
        }
        if (const auto noted = practice.note_backup(acting); !noted) {
            return tl::make_unexpected(noted.error());
        }
        return BackupFacts{path, backup->bytes.size(), backup->clients};
    });
}

namespace {

// What was revoked since the backup would open again: who still may look is asked anew.
std::size_t close_shares(Database& database) {
    if (database.integer("SELECT count(*) FROM sqlite_master WHERE name = 'share'") == 0) {
        return 0;
    }
    const auto open = database.integer("SELECT count(*) FROM share WHERE revoked_at IS NULL");
    database.run(
        "UPDATE share SET revoked_at = max(at, (SELECT coalesce(max(at), 0) FROM audit)) "
        "WHERE revoked_at IS NULL");
    return static_cast<std::size_t>(open);
}

}  // namespace

Stored<BackupFacts> restore_backup(const std::string& backup, const std::string& target,
                                   const Unlocking& unlocking,
                                   const std::vector<std::string>& erased_lists) {
    std::error_code none;
    if (fs::exists(target, none)) {
        return store_error(StoreErrorKind::exists,
                           target +
                               ": found a file here already, expected none: a restore never "
                               "replaces a practice");
    }
    if (const auto clear = nothing_left_over_beside(target); !clear) {
        return tl::make_unexpected(clear.error());
    }
    return caught([&]() -> Stored<BackupFacts> {
        const auto file = read_whole_file(backup);
        if (!file) {
            return tl::make_unexpected(file.error());
        }
        const auto opened = opened_backup(*file, unlocking);
        if (!opened) {
            return tl::make_unexpected(opened.error());
        }
        std::vector<std::string> lists = erased_lists;
        lists.push_back(erasure_list_path(backup));
        lists.push_back(erasure_list_path(target));
        const auto erased = marks_of(lists);
        if (!erased) {
            return tl::make_unexpected(erased.error());
        }
        Database database("", Database::Mode::in_memory);
        database.take_bytes(opened->database);
        if (const auto sound = clients_in_sound(database); !sound) {
            return tl::make_unexpected(sound.error());
        }
        erase_again(database, *erased);
        const std::size_t shares = close_shares(database);
        if (const auto listed = ErasureList(erasure_list_path(target)).add(*erased); !listed) {
            return tl::make_unexpected(listed.error());
        }
        database.run("VACUUM");
        const auto clients =
            static_cast<std::size_t>(database.integer("SELECT count(*) FROM client"));
        const auto bytes = database.bytes();
        if (const auto written = write_whole_file(target, bytes); !written) {
            return tl::make_unexpected(written.error());
        }
        Database restored(target, Database::Mode::existing);
        const auto sound = clients_in_sound(restored);
        if (!sound) {
            return tl::make_unexpected(sound.error());
        }
        if (*sound != clients) {
            return does_not_read_back();
        }
        return BackupFacts{target, bytes.size(), clients, shares};
    });
}

}  // namespace tracewright
