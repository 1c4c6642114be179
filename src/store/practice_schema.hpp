#pragma once

#include "store/sqlite_database.hpp"
#include "store/store_error.hpp"

#include <string>

namespace tracewright {

/// The version of the tables this program writes. Each earlier one is brought forward when a
/// practice is opened; a later one is refused. Format: docs/formats/practice.md.
int practice_schema_version();

/// Marks a file as a practice: SQLite's application id.
inline constexpr int practice_application_id = 0x54575231;

/// How every connection to a practice writes and forgets.
void set_up_connection(Database& database);

/// Makes the tables in an empty database.
void make_practice_tables(Database& database);

/// Whether the file is a practice, and of which version. Error: another kind of file, or too new.
Stored<int> practice_version(Database& database);

/// Brings the tables forward to this program's version, one version in one transaction each, after
/// copying the file as it was to `path`.before-VERSION (kept: nothing is lost if the new version
/// disappoints; erasure reaches it). Of several programs at once one does it and the others wait.
Stored<void> bring_tables_forward(Database& database, const std::string& path);

}  // namespace tracewright
