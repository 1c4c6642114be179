#pragma once

#include "intake/bring_in.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// Where a file stopped being readable, and what was expected there.
Json json_of(const FileError& error);
/// read, stored, duplicate, conflict, rejected and what is counted apart.
Json json_of_rows(const Ledger& ledger);
/// What was understood of a file, as `look --json` holds it.
Json json_of_look(const Intake& intake);

}  // namespace tracewright
