#include "intake/unread_columns.hpp"

#include "intake/row_cells.hpp"

#include <fmt/format.h>

namespace tracewright {

void UnreadColumns::see(const ReadRow& row) {
    if (row.state != ReadRow::State::data) {
        return;  // a row that is refused is told as that
    }
    for (const std::size_t c : row.unread) {
        Seen& seen = columns_[c];
        seen.first_line = seen.rows == 0 ? row.line : seen.first_line;
        ++seen.rows;
    }
}

void UnreadColumns::tell(const TableShape& shape, Ledger& ledger) const {
    for (const auto& [c, seen] : columns_) {
        const std::string& title = shape.columns[c].title;
        ledger.remark({0, 0, Fate::stored, "column_not_read",
                       fmt::format("column {}{} in {} row{}, the first on line {}", c + 1,
                                   title.empty() ? "" : " (" + quoted(title) + ")", seen.rows,
                                   seen.rows == 1 ? "" : "s", seen.first_line),
                       "something that can be kept beside the other columns: what stands there is "
                       "not read"});
    }
}

}  // namespace tracewright
