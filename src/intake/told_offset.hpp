#pragma once

#include "intake/offset_text.hpp"
#include "intake/read_row.hpp"
#include "intake/row_cells.hpp"

#include <cstddef>
#include <optional>

namespace tracewright {

/// How far from UTC a time of a row is: what it says itself, else the title of its column (or of
/// the one whose title says it of all times), else the row's cell in a column of offsets.
std::optional<WrittenOffset> told_offset(const WrittenTime& time, std::optional<std::size_t> column,
                                         const RowCells& cells, const ReadingPlan& plan);

/// By the column of offsets alone.
std::optional<WrittenOffset> told_offset_of_row(const RowCells& cells, const ReadingPlan& plan);

}  // namespace tracewright
