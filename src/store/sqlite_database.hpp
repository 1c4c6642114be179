#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;

namespace tracewright {

/// A statement that the database refused, with SQLite's own (extended) code. Stays within the
/// room: at its edge it becomes a StoreError. Bears no bound value.
class DatabaseFailure : public std::runtime_error {
  public:
    DatabaseFailure(int code, const std::string& message)
        : std::runtime_error(message), code_(code) {}
    int code() const { return code_; }

  private:
    int code_;
};

class Database;

/// A prepared statement, used again and again. Places are bound in order with `with(...)`. Ends
/// before its database.
class Statement {
  public:
    Statement(Database& database, std::string_view sql);

    /// Forgets what was bound and starts anew, with these values for ?1, ?2, ...
    template <typename... Values>
    Statement& with(const Values&... values) {
        start_anew();
        int place = 0;
        (bind(++place, values), ...);
        return *this;
    }
    /// True while there is a row.
    bool step();
    /// For statements that give no row.
    void run();

    std::int64_t integer(int column) const;
    std::optional<std::int64_t> optional_integer(int column) const;
    /// Valid until the next step.
    std::string_view text(int column) const;
    std::span<const std::uint8_t> blob(int column) const;
    bool is_null(int column) const;

  private:
    struct GiveBack {
        Database* database = nullptr;
        void operator()(sqlite3_stmt* statement) const noexcept;
    };
    std::unique_ptr<sqlite3_stmt, GiveBack> statement_;

    void start_anew();
    void bind(int place, std::int64_t value);
    void bind(int place, int value) { bind(place, std::int64_t{value}); }
    void bind(int place, std::string_view value);
    void bind(int place, const std::string& value) { bind(place, std::string_view(value)); }
    void bind(int place, const char* value) { bind(place, std::string_view(value)); }
    void bind(int place, std::span<const std::uint8_t> value);
    void bind(int place, const std::vector<std::uint8_t>& value) {
        bind(place, std::span<const std::uint8_t>(value));
    }
    void bind(int place, std::nullopt_t);
    template <typename Value>
    void bind(int place, const std::optional<Value>& value) {
        value ? bind(place, *value) : bind(place, std::nullopt);
    }
};

/// One connection. Not shared between threads.
class Database {
  public:
    enum class Mode { existing, create, read_only, in_memory };

    Database(const std::string& path, Mode mode);
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    void run(const char* sql);
    std::int64_t integer(std::string_view sql);
    std::string text(std::string_view sql);
    std::int64_t last_row() const;
    bool within_transaction() const;

    /// All pages of this database, as of one moment, into an empty one (the online backup).
    void copy_to(Database& target);
    /// The file's bytes as they would be on disk.
    std::vector<std::uint8_t> bytes() const;
    /// Fills an in-memory database with such bytes.
    void take_bytes(std::span<const std::uint8_t> bytes);

    sqlite3* handle() const { return handle_.get(); }

  private:
    struct Close {
        void operator()(sqlite3* database) const;
    };
    std::unique_ptr<sqlite3, Close> handle_;

    // Preparing costs more than most statements: those that were given back are used again.
    friend class Statement;
    struct Finalize {
        void operator()(sqlite3_stmt* statement) const;
    };
    std::multimap<std::string, std::unique_ptr<sqlite3_stmt, Finalize>, std::less<>> idle_;
    sqlite3_stmt* prepared(std::string_view sql);
    void give_back(sqlite3_stmt* statement) noexcept;
};

/// Everything or nothing: rolled back unless committed. Takes the write lock at once, so that what
/// is read inside can be relied on for what is written.
class Transaction {
  public:
    enum class Kind { write, exclusive, read };
    explicit Transaction(Database& database, Kind kind = Kind::write);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();

  private:
    Database& database_;
    bool open_ = true;
};

}  // namespace tracewright
