#include "intake/spelled_cells.hpp"

#include "intake/offset_text.hpp"
#include "intake/plain_text.hpp"
#include "intake/titled_clock.hpp"

#include <algorithm>
#include <string_view>

namespace tracewright {

bool offsets_stand_in(std::span<const SampleRow> data, std::size_t column) {
    std::size_t filled = 0;
    std::size_t offsets = 0;
    for (const SampleRow& row : data) {
        if (column >= row.cells.size() || row.cells[column].empty()) {
            continue;
        }
        const std::string_view cell = row.cells[column];
        const bool spelled = cell.starts_with('+') || cell.starts_with('-') ||
                             cell.starts_with("UTC") || cell.starts_with("GMT");
        ++filled;
        offsets +=
            spelled && cell.find(':') != std::string_view::npos && offset_in_cell(cell) ? 1U : 0U;
    }
    return filled > 0 && 10 * offsets >= 9 * filled;
}

bool are_clocks_by_title(std::span<const SampleRow> data, std::size_t column) {
    std::size_t filled = 0;
    std::size_t clocks = 0;
    for (const SampleRow& row : data) {
        if (column >= row.cells.size() || row.cells[column].empty() ||
            is_separator(row.cells[column])) {
            continue;
        }
        const bool number =
            row.forms[column] == CellForm::number || row.forms[column] == CellForm::date;
        ++filled;
        clocks += !number && titled_clock(row.cells[column]) ? 1U : 0U;
    }
    return filled > 0 && 10 * clocks >= 9 * filled;
}

bool are_more_than_digits(std::span<const SampleRow> data, std::size_t column) {
    return std::ranges::any_of(data, [&](const SampleRow& row) {
        return column < row.cells.size() &&
               row.cells[column].find_first_not_of("0123456789") != std::string::npos;
    });
}

}  // namespace tracewright
