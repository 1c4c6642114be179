#include "intake/told_offset.hpp"

namespace tracewright {

std::optional<WrittenOffset> told_offset(const WrittenTime& time, std::optional<std::size_t> column,
                                         const RowCells& cells, const ReadingPlan& plan) {
    if (time.offset) {
        return WrittenOffset{*time.offset, time.utc};
    }
    const auto& columns = plan.shape.columns;
    const auto titled = column && columns[*column].offset ? column : plan.shape.offset_by_title;
    return titled ? columns[*titled].offset : told_offset_of_row(cells, plan);
}

std::optional<WrittenOffset> told_offset_of_row(const RowCells& cells, const ReadingPlan& plan) {
    return plan.offset_column ? offset_in_cell(cells.text(*plan.offset_column)) : std::nullopt;
}

}  // namespace tracewright
