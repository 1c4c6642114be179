#pragma once

#include "store/sqlite_database.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

// The few values a practice keeps of itself, by name. Within a caller's transaction; throw
// DatabaseFailure.

inline constexpr const char* locked_key_name = "locked_key";

/// Under which a coach's own lock is kept.
std::string coach_lock_name(std::int64_t coach);

/// Empty if there is no value of this name.
std::vector<std::uint8_t> practice_value(Database& database, const std::string& name);
void set_practice_value(Database& database, const std::string& name,
                        std::span<const std::uint8_t> value);

}  // namespace tracewright
