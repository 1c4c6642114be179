#pragma once

#include "intake/row_source.hpp"
#include "intake/table_shape.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A row's cells by column, as plain text. A column beyond the row's end reads as an empty cell.
/// Looks into the row and the shape it was made of: they outlive it.
class RowCells {
  public:
    RowCells(const Row& row, const TableShape& shape);

    /// Trimmed, digits and marks as ASCII (`plain`).
    std::string_view text(std::size_t column) const;
    /// As written, trimmed.
    std::string_view raw(std::size_t column) const;
    CellForm form(std::size_t column) const;
    /// Where a column's cell stands in the line; 0 if the row is too short to have it.
    std::uint32_t at(std::size_t column) const;
    /// Neither empty nor a drawn line.
    bool filled(std::size_t column) const;
    std::size_t filled_cells() const;
    /// The first filled column of a role.
    std::optional<std::size_t> filled_of(Role role) const;

  private:
    const Row& row_;
    const TableShape& shape_;
    std::vector<std::string> texts_;
};

/// A cell's text as an error tells it: within quotes, on one line, cut short: no copy of the file.
std::string quoted(std::string_view text);

}  // namespace tracewright
