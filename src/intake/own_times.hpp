#pragma once

#include "intake/read_row.hpp"
#include "intake/row_cells.hpp"

#include <optional>

namespace tracewright {

/// The time that a cell holds in a column of times, dates or clocks: in the forms that its title
/// allows. Numbers of a column that isn't read as such are no parts of a day.
std::optional<WrittenTime> column_time(const RowCells& cells, const ReadingPlan& plan,
                                       std::size_t column);

/// The time that stands in a column of its own beside the row's: with its date, else on `date`.
/// Empty if there is none, or a time of day and no date to put it on.
std::optional<OwnTime> own_time(const RowCells& cells, const ReadingPlan& plan, std::size_t column,
                                std::optional<CivilDate> date);

/// From when to when the client slept by the columns of sleep; either end may be missing. Of times
/// of day the end follows the beginning within a day, and has been when the row was written.
struct SleptSpan {
    std::optional<OwnTime> begin;
    std::optional<OwnTime> end;
};
SleptSpan slept_span(const RowCells& cells, const ReadingPlan& plan, const ReadRow& row);

}  // namespace tracewright
