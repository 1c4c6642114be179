#include "store/practice_door.hpp"

#include "store/practice_schema.hpp"
#include "store/practice_values.hpp"
#include "store/sqlite_failure.hpp"

#include <filesystem>

namespace tracewright {

namespace {

constexpr const char* stays_shut =
    "found a coach or passphrase that does not open this practice, expected both as they were set";

}  // namespace

Stored<PracticeDoor> PracticeDoor::of_coach(const std::string& path, std::string_view handle) {
    std::error_code none;
    if (!std::filesystem::is_regular_file(path, none)) {
        return store_error(StoreErrorKind::not_found,
                           path + ": found no practice here, expected one made by init");
    }
    return caught([&]() -> Stored<PracticeDoor> {
        Database database(path, Database::Mode::existing);
        if (const auto version = practice_version(database); !version) {
            return tl::make_unexpected(version.error());
        }
        auto practice = LockedPracticeKey::read(practice_value(database, locked_key_name));
        if (!practice) {
            return store_error(StoreErrorKind::broken, practice.error());
        }
        PracticeDoor door(std::move(*practice));
        Statement find(database, "SELECT id, role FROM coach WHERE handle = ? AND left_at IS NULL");
        if (find.with(handle).step()) {
            door.coach_ = find.integer(0);
            const auto own = practice_value(database, coach_lock_name(door.coach_));
            if (!own.empty()) {
                auto lock = CoachLock::read(own);
                if (!lock) {
                    return store_error(StoreErrorKind::broken, lock.error());
                }
                door.own_ = std::move(*lock);
            }
            door.may_by_practice_ =
                !door.own_ && static_cast<CoachRole>(find.integer(1)) == CoachRole::owner;
        }
        return door;
    });
}

tl::expected<SecretKey, std::string> PracticeDoor::opened(std::string_view passphrase) const {
    // Tried in every case, so that the time taken does not tell who works here.
    auto key = own_ ? own_->opened(coach_, passphrase) : practice_.opened_by_passphrase(passphrase);
    if (key && (own_ || may_by_practice_)) {
        return key;
    }
    return tl::make_unexpected(std::string(stays_shut));
}

}  // namespace tracewright
