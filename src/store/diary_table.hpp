#pragma once

#include "access/sealing.hpp"
#include "diary/diary_entry.hpp"
#include "store/sqlite_database.hpp"

#include <cstdint>
#include <optional>
#include <string>

namespace tracewright {

/// Diary entries in the embedded database: times plain, all else sealed. Within a caller's
/// transaction; throws DatabaseFailure, and std::runtime_error at an entry that does not open.
/// `place` is the client's own place for sealed text.
class DiaryTable {
  public:
    DiaryTable(Database& database, const Seal& seal);

    /// Ascending by time, then in order of storing; all of them without a window.
    Diary entries(std::int64_t client, const std::string& place,
                  std::optional<Interval> window = std::nullopt);
    bool has(std::int64_t client, const DiaryEntry& entry);
    void add(std::int64_t client, std::int64_t import, const std::string& place,
             const DiaryEntry& entry);
    std::int64_t remove_of_import(std::int64_t import);

  private:
    const Seal& seal_;
    Statement entries_;
    Statement has_;
    Statement add_;
    Statement remove_;
    Statement changes_;
};

}  // namespace tracewright
