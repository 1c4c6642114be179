#pragma once

#include "store/store_error.hpp"

#include <string>

namespace tracewright {

/// Error: a file of SQLite's own stands beside a place where no practice is. SQLite would play it
/// back into whatever practice is put there, and destroy it.
Stored<void> nothing_left_over_beside(const std::string& path);

}  // namespace tracewright
