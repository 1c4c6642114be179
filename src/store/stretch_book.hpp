#pragma once

#include "store/audit_table.hpp"
#include "store/practice_records.hpp"
#include "store/sqlite_practice.hpp"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace tracewright {

/// Stretches told, by a connection of its own to an open practice. Readings are never touched;
/// every telling can be taken back.
class StretchBook {
  public:
    explicit StretchBook(const SqlitePractice& practice);
    ~StretchBook();
    StretchBook(const StretchBook&) = delete;
    StretchBook& operator=(const StretchBook&) = delete;

    /// Those that stand, in order of telling.
    Stored<std::vector<StretchRecord>> told(std::int64_t client);
    /// `refused` for a stretch without length.
    Stored<std::int64_t> tell(std::int64_t client, Interval stretch, bool suspect,
                              const std::string& why, const Acting& acting);
    /// `not_found` unless it stands.
    Stored<void> take_back(std::int64_t client, std::int64_t telling, const Acting& acting);

  private:
    struct Tables;
    Stored<std::unique_ptr<Tables>> tables_;
};

}  // namespace tracewright
