#include "intake/row_cells.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>

namespace tracewright {

namespace {

// Found texts are told short: an error is not a copy of the file.
constexpr std::size_t longest_found = 60;

std::string shortened(std::string_view text) {
    std::string result(text.substr(0, longest_found));
    // Not in the middle of a character.
    while (!result.empty() && result.size() < text.size() &&
           (static_cast<unsigned char>(text[result.size()]) & 0xC0U) == 0x80U) {
        result.pop_back();
    }
    for (char& c : result) {
        c = c == '\n' || c == '\r' || c == '\t' ? ' ' : c;
    }
    return text.size() > result.size() ? result + "..." : result;
}

}  // namespace

RowCells::RowCells(const Row& row, const TableShape& shape)
    : row_(row), shape_(shape), texts_(row.cells.size()) {
    std::transform(row.cells.begin(), row.cells.end(), texts_.begin(),
                   [](const Cell& cell) { return plain(cell.text); });
}

std::string_view RowCells::text(std::size_t column) const {
    return column < texts_.size() ? std::string_view(texts_[column]) : std::string_view();
}

std::string_view RowCells::raw(std::size_t column) const {
    return column < row_.cells.size() ? trimmed(row_.cells[column].text) : std::string_view();
}

CellForm RowCells::form(std::size_t column) const {
    return column < row_.cells.size() ? row_.cells[column].form : CellForm::text;
}

std::uint32_t RowCells::at(std::size_t column) const {
    return column < row_.cells.size() ? row_.cells[column].column : 0;
}

bool RowCells::filled(std::size_t column) const {
    const std::string_view t = text(column);
    return !t.empty() && !is_separator(t);
}

std::size_t RowCells::filled_cells() const {
    std::size_t n = 0;
    for (std::size_t c = 0; c < texts_.size(); ++c) {
        n += filled(c) ? 1U : 0U;
    }
    return n;
}

std::optional<std::size_t> RowCells::filled_of(Role role) const {
    for (std::size_t c = 0; c < shape_.columns.size(); ++c) {
        if (shape_.columns[c].role == role && filled(c)) {
            return c;
        }
    }
    return std::nullopt;
}

std::string quoted(std::string_view text) {
    return "'" + shortened(text) + "'";
}

}  // namespace tracewright
