#include "store/practice_schema.hpp"

#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdio>
#include <filesystem>

namespace tracewright {

namespace {

// Columns named sealed_ hold text under the practice's key. Times are seconds since 1970, UTC.
constexpr const char* version_1 = R"sql(
CREATE TABLE practice (
  name TEXT PRIMARY KEY,
  value BLOB NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE coach (
  id INTEGER PRIMARY KEY,
  handle TEXT NOT NULL UNIQUE,
  sealed_name BLOB NOT NULL,
  role INTEGER NOT NULL,
  licence INTEGER NOT NULL,
  added_at INTEGER NOT NULL,
  left_at INTEGER
) STRICT;

CREATE TABLE client (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  mark BLOB NOT NULL UNIQUE CHECK (length(mark) = 16),
  handle TEXT NOT NULL UNIQUE,
  sealed_name BLOB NOT NULL,
  sealed_facts BLOB NOT NULL,
  revision INTEGER NOT NULL,
  added_at INTEGER NOT NULL
) STRICT;

CREATE TABLE import (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_source BLOB NOT NULL,
  rows_stored INTEGER NOT NULL,
  rows_duplicate INTEGER NOT NULL,
  rows_conflict INTEGER NOT NULL,
  rows_rejected INTEGER NOT NULL
) STRICT;
CREATE INDEX import_of_client ON import(client, id);

CREATE TABLE wear (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  sealed_source BLOB NOT NULL,
  start INTEGER NOT NULL,
  start_told INTEGER NOT NULL,
  ended INTEGER NOT NULL,
  planned_end INTEGER,
  interval_s INTEGER NOT NULL,
  last_at INTEGER,
  changed_by_hand_at INTEGER
) STRICT;
CREATE INDEX wear_of_client ON wear(client, start);

CREATE TABLE trace_block (
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  wear INTEGER NOT NULL REFERENCES wear(id) ON DELETE CASCADE,
  day INTEGER NOT NULL,
  readings INTEGER NOT NULL,
  block BLOB NOT NULL,
  PRIMARY KEY (client, wear, day)
) STRICT, WITHOUT ROWID;

CREATE TABLE diary_entry (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  import INTEGER REFERENCES import(id),
  at INTEGER NOT NULL,
  sameness BLOB NOT NULL,
  sealed_entry BLOB NOT NULL,
  UNIQUE (client, sameness)
) STRICT;
CREATE INDEX diary_of_client ON diary_entry(client, at, id);

CREATE TABLE held_reading (
  import INTEGER NOT NULL REFERENCES import(id) ON DELETE CASCADE,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  hundredths INTEGER NOT NULL,
  unit INTEGER NOT NULL,
  line INTEGER NOT NULL
) STRICT;
CREATE INDEX held_of_client ON held_reading(client, at);

-- What an import replaced, so that undoing it gives back the very bytes. block and wear are NULL
-- where there was none.
CREATE TABLE block_before (
  import INTEGER NOT NULL REFERENCES import(id) ON DELETE CASCADE,
  wear INTEGER NOT NULL,
  day INTEGER NOT NULL,
  readings INTEGER,
  block BLOB,
  PRIMARY KEY (import, wear, day)
) STRICT, WITHOUT ROWID;
CREATE TABLE wear_before (
  import INTEGER NOT NULL REFERENCES import(id) ON DELETE CASCADE,
  wear INTEGER NOT NULL,
  existed INTEGER NOT NULL,
  start INTEGER,
  start_told INTEGER,
  interval_s INTEGER,
  last_at INTEGER,
  PRIMARY KEY (import, wear)
) STRICT, WITHOUT ROWID;

CREATE TABLE audit (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL,
  deed TEXT NOT NULL,
  client INTEGER,
  number INTEGER
) STRICT;
CREATE INDEX audit_of_client ON audit(client, id);
CREATE TRIGGER audit_is_not_rewritten BEFORE UPDATE ON audit
BEGIN SELECT RAISE(ABORT, 'the audit is not rewritten'); END;
)sql";

// What is said, agreed and answered.
constexpr const char* version_2 = R"sql(
CREATE TABLE note (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_text BLOB NOT NULL
) STRICT;
CREATE INDEX note_of_client ON note(client, id);

CREATE TABLE promise (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  made_at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  due INTEGER NOT NULL,
  kept_at INTEGER,
  sealed_text BLOB NOT NULL
) STRICT;
CREATE INDEX promise_of_client ON promise(client, id);

CREATE TABLE escalation (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  event TEXT NOT NULL,
  first_seen INTEGER NOT NULL,
  sealed_escalation BLOB NOT NULL,
  UNIQUE (client, event)
) STRICT;
CREATE TABLE acknowledgement (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  escalation INTEGER NOT NULL REFERENCES escalation(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_answer BLOB NOT NULL
) STRICT;
CREATE INDEX acknowledgement_of_escalation ON acknowledgement(escalation);

CREATE TABLE finding (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  window_from INTEGER NOT NULL,
  window_to INTEGER NOT NULL,
  last_import INTEGER NOT NULL,
  sealed_finding BLOB NOT NULL
) STRICT;
CREATE INDEX finding_of_client ON finding(client, id);
)sql";

// What is known of a client's foods: corrections, recipes, usual foods.
constexpr const char* version_3 = R"sql(
CREATE TABLE client_food (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sameness BLOB NOT NULL,
  sealed_food BLOB NOT NULL,
  UNIQUE (client, sameness)
) STRICT;
)sql";

// Trials: drawn once, never rewritten; what was told of their days, and that one was stopped.
constexpr const char* version_4 = R"sql(
CREATE TABLE trial (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_trial BLOB NOT NULL
) STRICT;
CREATE INDEX trial_of_client ON trial(client, id);
CREATE TRIGGER trial_is_not_rewritten BEFORE UPDATE ON trial
BEGIN SELECT RAISE(ABORT, 'a trial is not rewritten'); END;

CREATE TABLE trial_day (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  trial INTEGER NOT NULL REFERENCES trial(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  day INTEGER NOT NULL,
  sealed_done BLOB NOT NULL
) STRICT;
CREATE INDEX trial_day_of_trial ON trial_day(trial, id);

CREATE TABLE trial_stop (
  trial INTEGER PRIMARY KEY REFERENCES trial(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_why BLOB NOT NULL
) STRICT;
)sql";

// Diary entries that stand instead of another: corrected, or struck out and then nowhere seen. What
// a coach told of stretches of a trace.
constexpr const char* version_5 = R"sql(
ALTER TABLE diary_entry ADD COLUMN instead_of INTEGER;
ALTER TABLE diary_entry ADD COLUMN struck INTEGER NOT NULL DEFAULT 0;
CREATE INDEX diary_corrected ON diary_entry(instead_of) WHERE instead_of IS NOT NULL;

CREATE TABLE told_stretch (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  begins INTEGER NOT NULL,
  ends INTEGER NOT NULL,
  suspect INTEGER NOT NULL,
  sealed_why BLOB NOT NULL
) STRICT;
CREATE INDEX told_stretch_of_client ON told_stretch(client, id);
)sql";

// How a sensor sat on the skin: overpatch and site.
constexpr const char* version_6 = R"sql(
CREATE TABLE wear_fixing (
  wear INTEGER PRIMARY KEY REFERENCES wear(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_fixing BLOB NOT NULL
) STRICT;
)sql";

// Narrow views given to others, and every look through one. A token is kept as its hash alone.
constexpr const char* version_7 = R"sql(
CREATE TABLE share (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  until INTEGER NOT NULL,
  revoked_at INTEGER,
  token_hash BLOB NOT NULL UNIQUE CHECK (length(token_hash) = 32),
  sealed_share BLOB NOT NULL
) STRICT;
CREATE INDEX share_of_client ON share(client, id);

CREATE TABLE share_look (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  share INTEGER NOT NULL REFERENCES share(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  asked TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT;
CREATE INDEX share_look_of_share ON share_look(share, id);
)sql";

// Photos of meals, each beside the entry as it was first written: a correction keeps them.
constexpr const char* version_8 = R"sql(
CREATE TABLE meal_photo (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  client INTEGER NOT NULL REFERENCES client(id) ON DELETE CASCADE,
  meal INTEGER NOT NULL REFERENCES diary_entry(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id),
  sealed_photo BLOB NOT NULL
) STRICT;
CREATE INDEX meal_photo_of_client ON meal_photo(client, id);
CREATE INDEX meal_photo_of_meal ON meal_photo(meal);
)sql";

// The one that a coach chose to be counted where several were worn at once.
constexpr const char* version_9 = R"sql(
CREATE TABLE chosen_wear (
  wear INTEGER PRIMARY KEY REFERENCES wear(id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  coach INTEGER NOT NULL REFERENCES coach(id)
) STRICT;
)sql";

constexpr std::array versions{version_1, version_2, version_3, version_4, version_5,
                              version_6, version_7, version_8, version_9};

std::string before_path(const std::string& path, int version) {
    return path + ".before-" + std::to_string(version);
}

// A finished copy or none: written beside and renamed.
void copy_aside(Database& database, const std::string& target) {
    namespace fs = std::filesystem;
    const std::string half = target + ".half";
    std::error_code none;
    fs::remove(half, none);
    // Its owner's alone from the first byte on, as the practice is.
    if (!write_whole_file(half, std::string_view())) {
        throw DatabaseFailure(0, "the copy before a migration can't be written");
    }
    {
        Database copy(half, Database::Mode::create);
        database.copy_to(copy);
    }
    if (!put_in_place(half, target)) {
        throw DatabaseFailure(0, "the copy before a migration can't be put in place");
    }
}

void set_version(Database& database, int version) {
    database.run(fmt::format("PRAGMA user_version = {}", version).c_str());
}

}  // namespace

void set_up_connection(Database& database) {
    database.run(
        "PRAGMA synchronous = FULL;"
        "PRAGMA foreign_keys = ON;"
        "PRAGMA secure_delete = ON;"
        "PRAGMA trusted_schema = OFF;"
        "PRAGMA temp_store = MEMORY");
}

int practice_schema_version() {
    return static_cast<int>(versions.size());
}

void make_practice_tables(Database& database) {
    database.run(fmt::format("PRAGMA application_id = {}", practice_application_id).c_str());
    for (const char* version : versions) {
        database.run(version);
    }
    set_version(database, practice_schema_version());
}

Stored<int> practice_version(Database& database) {
    if (database.integer("PRAGMA application_id") != practice_application_id) {
        return store_error(StoreErrorKind::not_a_practice,
                           "found a file that is no practice, expected one made by init");
    }
    const auto version = static_cast<int>(database.integer("PRAGMA user_version"));
    if (version < 1 || version > practice_schema_version()) {
        return store_error(
            StoreErrorKind::too_new,
            fmt::format(
                "found a practice of version {}, expected at most {}: use the newer program",
                version, practice_schema_version()));
    }
    return version;
}

Stored<void> bring_tables_forward(Database& database, const std::string& path) {
    for (;;) {
        auto version = practice_version(database);
        if (!version) {
            return tl::make_unexpected(version.error());
        }
        if (*version == practice_schema_version()) {
            return {};
        }
        // The copy is taken before the lock, as SQLite's backup can't read under it; if another
        // program migrates meanwhile, the version below says so and the copy is only an extra one.
        copy_aside(database, before_path(path, *version));
        Transaction alone(database, Transaction::Kind::exclusive);
        if (database.integer("PRAGMA user_version") != *version) {
            continue;
        }
        database.run(versions[static_cast<std::size_t>(*version)]);
        set_version(database, *version + 1);
        alone.commit();
    }
}

}  // namespace tracewright
