#include "store/sqlite_database.hpp"

#include <sqlite3.h>

#include <cstring>
#include <new>
#include <utility>

namespace tracewright {

namespace {

constexpr int busy_milliseconds = 10'000;
constexpr std::size_t most_idle = 200;  // a few times the texts of this room

[[noreturn]] void fail(sqlite3* database) {
    throw DatabaseFailure(sqlite3_extended_errcode(database), sqlite3_errmsg(database));
}

int flags_of(Database::Mode mode) {
    switch (mode) {
        case Database::Mode::existing:
            return SQLITE_OPEN_READWRITE;
        case Database::Mode::create:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
        case Database::Mode::read_only:
            return SQLITE_OPEN_READONLY;
        case Database::Mode::in_memory:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_MEMORY;
    }
    return SQLITE_OPEN_READONLY;
}

}  // namespace

void Database::Close::operator()(sqlite3* database) const {
    sqlite3_close_v2(database);
}

void Database::Finalize::operator()(sqlite3_stmt* statement) const {
    sqlite3_finalize(statement);
}

sqlite3_stmt* Database::prepared(std::string_view sql) {
    if (const auto idle = idle_.find(sql); idle != idle_.end()) {
        sqlite3_stmt* statement = idle->second.release();
        idle_.erase(idle);
        return statement;
    }
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v3(handle(), sql.data(), static_cast<int>(sql.size()),
                           SQLITE_PREPARE_PERSISTENT, &statement, nullptr) != SQLITE_OK) {
        fail(handle());
    }
    return statement;
}

void Database::give_back(sqlite3_stmt* statement) noexcept {
    std::unique_ptr<sqlite3_stmt, Finalize> kept(statement);
    sqlite3_reset(statement);
    sqlite3_clear_bindings(statement);
    if (idle_.size() < most_idle) {
        try {
            idle_.emplace(sqlite3_sql(statement), std::move(kept));
        } catch (const std::bad_alloc&) {  // it is prepared again when it is asked for
        }
    }
}

void Statement::GiveBack::operator()(sqlite3_stmt* statement) const noexcept {
    database->give_back(statement);
}

Statement::Statement(Database& database, std::string_view sql)
    : statement_(database.prepared(sql), GiveBack{&database}) {}

void Statement::start_anew() {
    sqlite3_reset(statement_.get());
    sqlite3_clear_bindings(statement_.get());
}

bool Statement::step() {
    const int result = sqlite3_step(statement_.get());
    if (result == SQLITE_ROW) {
        return true;
    }
    if (result != SQLITE_DONE) {
        sqlite3* database = sqlite3_db_handle(statement_.get());
        const int code = sqlite3_extended_errcode(database);
        const std::string message = sqlite3_errmsg(database);
        sqlite3_reset(statement_.get());
        throw DatabaseFailure(code, message);
    }
    sqlite3_reset(statement_.get());
    return false;
}

void Statement::run() {
    while (step()) {
    }
}

void Statement::bind(int place, std::int64_t value) {
    if (sqlite3_bind_int64(statement_.get(), place, value) != SQLITE_OK) {
        fail(sqlite3_db_handle(statement_.get()));
    }
}

void Statement::bind(int place, std::string_view value) {
    if (sqlite3_bind_text64(statement_.get(), place, value.data(), value.size(), SQLITE_TRANSIENT,
                            SQLITE_UTF8) != SQLITE_OK) {
        fail(sqlite3_db_handle(statement_.get()));
    }
}

void Statement::bind(int place, std::span<const std::uint8_t> value) {
    // An empty span may have no address, which SQLite would take for NULL.
    const void* data = value.empty() ? "" : static_cast<const void*>(value.data());
    if (sqlite3_bind_blob64(statement_.get(), place, data, value.size(), SQLITE_TRANSIENT) !=
        SQLITE_OK) {
        fail(sqlite3_db_handle(statement_.get()));
    }
}

void Statement::bind(int place, std::nullopt_t) {
    if (sqlite3_bind_null(statement_.get(), place) != SQLITE_OK) {
        fail(sqlite3_db_handle(statement_.get()));
    }
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(statement_.get(), column);
}

bool Statement::is_null(int column) const {
    return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}

std::optional<std::int64_t> Statement::optional_integer(int column) const {
    return is_null(column) ? std::nullopt : std::optional(integer(column));
}

std::string_view Statement::text(int column) const {
    const unsigned char* text = sqlite3_column_text(statement_.get(), column);
    return {reinterpret_cast<const char*>(text),
            static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

std::span<const std::uint8_t> Statement::blob(int column) const {
    const void* data = sqlite3_column_blob(statement_.get(), column);
    return {static_cast<const std::uint8_t*>(data),
            static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

Database::Database(const std::string& path, Mode mode) {
    sqlite3* database = nullptr;
    const int result =
        sqlite3_open_v2(path.c_str(), &database, flags_of(mode) | SQLITE_OPEN_NOMUTEX, nullptr);
    handle_.reset(database);
    if (result != SQLITE_OK) {
        throw DatabaseFailure(result, database != nullptr ? sqlite3_errmsg(database) : "no memory");
    }
    sqlite3_extended_result_codes(database, 1);
    sqlite3_busy_timeout(database, busy_milliseconds);
}

void Database::run(const char* sql) {
    if (sqlite3_exec(handle_.get(), sql, nullptr, nullptr, nullptr) != SQLITE_OK) {
        fail(handle_.get());
    }
}

std::int64_t Database::integer(std::string_view sql) {
    Statement statement(*this, sql);
    return statement.step() ? statement.integer(0) : 0;
}

std::string Database::text(std::string_view sql) {
    Statement statement(*this, sql);
    return statement.step() ? std::string(statement.text(0)) : std::string();
}

bool Database::within_transaction() const {
    return sqlite3_get_autocommit(handle_.get()) == 0;
}

std::int64_t Database::last_row() const {
    return sqlite3_last_insert_rowid(handle_.get());
}

void Database::copy_to(Database& target) {
    sqlite3_backup* backup =
        sqlite3_backup_init(target.handle_.get(), "main", handle_.get(), "main");
    if (backup == nullptr) {
        fail(target.handle_.get());
    }
    int result = SQLITE_OK;
    do {
        result = sqlite3_backup_step(backup, -1);
        if (result == SQLITE_BUSY || result == SQLITE_LOCKED) {
            sqlite3_sleep(20);
        }
    } while (result == SQLITE_OK || result == SQLITE_BUSY || result == SQLITE_LOCKED);
    if (sqlite3_backup_finish(backup) != SQLITE_OK || result != SQLITE_DONE) {
        fail(target.handle_.get());
    }
}

std::vector<std::uint8_t> Database::bytes() const {
    sqlite3_int64 size = 0;
    unsigned char* data = sqlite3_serialize(handle_.get(), "main", &size, 0);
    if (data == nullptr) {
        throw DatabaseFailure(SQLITE_NOMEM, "no memory for the database's bytes");
    }
    std::vector<std::uint8_t> bytes(data, data + size);
    sqlite3_free(data);
    return bytes;
}

void Database::take_bytes(std::span<const std::uint8_t> bytes) {
    auto* data = static_cast<unsigned char*>(sqlite3_malloc64(bytes.size()));
    if (data == nullptr) {
        throw DatabaseFailure(SQLITE_NOMEM, "no memory for the database's bytes");
    }
    std::memcpy(data, bytes.data(), bytes.size());
    const auto size = static_cast<sqlite3_int64>(bytes.size());
    if (sqlite3_deserialize(handle_.get(), "main", data, size, size,
                            SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE) !=
        SQLITE_OK) {
        fail(handle_.get());
    }
}

Transaction::Transaction(Database& database, Kind kind) : database_(database) {
    database_.run(kind == Kind::write       ? "BEGIN IMMEDIATE"
                  : kind == Kind::exclusive ? "BEGIN EXCLUSIVE"
                                            : "BEGIN DEFERRED");
}

Transaction::~Transaction() {
    if (open_) {
        // A failed rollback leaves nothing committed either: the connection's end undoes it.
        sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
    }
}

void Transaction::commit() {
    database_.run("COMMIT");
    open_ = false;
}

}  // namespace tracewright
