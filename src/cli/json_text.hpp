#pragma once

#include "intake/bring_in.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// A change that could break a reader raises it (docs/formats).
inline constexpr int look_json_version = 1;

Json json_of(const FileError& error);
/// read, stored, duplicate, conflict, rejected and what is counted apart.
Json json_of_rows(const Ledger& ledger);
Json json_of_look(const Intake& intake);

}  // namespace tracewright
