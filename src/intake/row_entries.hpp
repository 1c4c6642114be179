#pragma once

#include "intake/column_title.hpp"
#include "intake/read_row.hpp"
#include "intake/row_cells.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// Adds to `row` what its cells say was eaten, done, slept, felt, taken or measured, one entry for
/// each thing, and a remark for each cell that was kept but not understood. Times are not set here;
/// whether the row has an end (`end_wall`) is already known. A row without any gets none.
void add_entries(const RowCells& cells, const ReadingPlan& plan, ReadRow& row);

/// What a row's kind cell says it is; empty if it has none that says anything.
std::optional<KindMeaning> kind_of_row(const RowCells& cells, const ReadingPlan& plan);

}  // namespace tracewright
