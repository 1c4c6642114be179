#pragma once

#include "intake/bring_in.hpp"
#include "render/review_json.hpp"
#include "store/import_plan.hpp"
#include "store/import_table.hpp"
#include "time/zone_history.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What was understood of a file and what bringing it in does, as the page shows it before and
/// after: guesses with their reasons, questions with what may be answered, columns, first rows, the
/// fate of every row, and wears by the client's clock. `plan` empty: a question comes first. At
/// most 50 rows of one code are told singly; `notes_by_code` counts all.
Json json_of_import(const Intake& intake, const std::optional<ImportPlan>& plan,
                    const ZoneHistory& clock);

/// The imports of a client, newest first: that one can be undone.
Json json_of_imports(const std::vector<ImportRecord>& imports, const ZoneHistory& clock);

}  // namespace tracewright
