#pragma once

#include "access/sealing.hpp"
#include "store/audit_table.hpp"
#include "store/diary_table.hpp"
#include "store/import_plan.hpp"
#include "store/trace_table.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// A file that was brought in, as kept. The four counts add up to the rows read.
struct ImportRecord {
    std::int64_t id = 0;
    Instant at;
    std::int64_t coach = 0;
    std::string source;  ///< the file's name, without its folder
    std::uint64_t rows_stored = 0;
    std::uint64_t rows_duplicate = 0;
    std::uint64_t rows_conflict = 0;
    std::uint64_t rows_rejected = 0;
};

/// Imports in the embedded database: what each stored, and what it replaced, so that it can be
/// undone to the very bytes. Within a caller's write transaction; throws DatabaseFailure.
class ImportTable {
  public:
    ImportTable(Database& database, const Seal& seal, TraceTable& trace, DiaryTable& diary);

    /// Plans against what is there now.
    ImportPlan plan(std::int64_t client, BroughtIn file, WhoseFile whose);
    /// Stores what was planned. The number of the import.
    std::int64_t store(std::int64_t client, const std::string& place, const std::string& source,
                       const ImportPlan& plan, const Acting& acting);
    /// Newest last.
    std::vector<ImportRecord> imports(std::int64_t client, const std::string& place);
    std::vector<BroughtIn::Held> held(std::int64_t client);
    std::optional<Instant> readings_brought_in_at(std::int64_t client);
    /// What rests on the import, in words, one for each; then it can't be undone.
    std::vector<std::string> what_rests_on(std::int64_t client, const ImportRecord& import);
    void undo(std::int64_t client, std::int64_t import);

  private:
    Database& database_;
    const Seal& seal_;
    TraceTable& trace_;
    DiaryTable& diary_;
    Statement add_;
    Statement imports_;
    Statement with_readings_;
    Statement add_held_;
    Statement held_;
    Statement add_block_before_;
    Statement add_wear_before_;

    std::int64_t wear_for(std::int64_t client, std::int64_t import, const std::string& place,
                          const ImportPlan::PlannedWear& planned);
    void merge(std::int64_t client, std::int64_t import, std::int64_t wear,
               std::span<const Reading> fresh);
};

}  // namespace tracewright
