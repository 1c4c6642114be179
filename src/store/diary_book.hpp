#pragma once

#include "diary/diary_entry.hpp"
#include "store/audit_table.hpp"
#include "store/sqlite_practice.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace tracewright {

/// A diary entry as it stands, and what it is called by.
struct DiaryRecord {
    std::int64_t id = 0;
    std::int64_t import = 0;  ///< what brought it in, or corrected it
    bool corrected = false;   ///< it stands instead of another
    DiaryEntry entry;
};

/// Corrections of single diary entries, by a connection of its own to an open practice. What is
/// corrected or struck out is not lost: the entry that stands instead of it is an import of its
/// own, and undoing that one brings the earlier back.
class DiaryBook {
  public:
    explicit DiaryBook(const SqlitePractice& practice);
    ~DiaryBook();
    DiaryBook(const DiaryBook&) = delete;
    DiaryBook& operator=(const DiaryBook&) = delete;

    /// Ascending by time, then in order of storing.
    Stored<std::vector<DiaryRecord>> entries(std::int64_t client, Interval window);
    /// Puts `corrected` in the entry's place, or strikes it out. The number of the import.
    /// `not_found` unless the entry stands; `exists` where such an entry stands already.
    Stored<std::int64_t> correct(std::int64_t client, std::int64_t entry,
                                 const std::optional<DiaryEntry>& corrected, const Acting& acting);

  private:
    struct Tables;
    Stored<std::unique_ptr<Tables>> tables_;
};

}  // namespace tracewright
