#include "intake/cut_decimals.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::size_t rows_to_tell_by = 3;

bool digits(const std::string& cell, std::size_t most) {
    return !cell.empty() && cell.size() <= most &&
           cell.find_first_not_of("0123456789") == std::string::npos;
}

// Whole levels up to 25 are mmol/L, which nobody writes without decimals throughout.
bool small_level(const std::string& cell) {
    return digits(cell, 2) && std::stoi(cell) <= 25;
}

bool refused(const SampleRow& row, std::size_t fields) {
    return row.cells.size() > fields &&
           std::any_of(row.cells.begin() + static_cast<std::ptrdiff_t>(fields), row.cells.end(),
                       [](const std::string& cell) { return !cell.empty(); });
}

bool cut_at(const SampleRow& row, std::size_t column) {
    return column + 1 < row.cells.size() && row.forms[column] == CellForm::text &&
           row.forms[column + 1] == CellForm::text && small_level(row.cells[column]) &&
           digits(row.cells[column + 1], 2);
}

}  // namespace

std::optional<CutDecimals> cut_decimals(const std::vector<SampleRow>& sample, std::size_t data,
                                        std::size_t titles, const TableShape& shape,
                                        const SourceFacts& facts) {
    const auto column = shape.first(Role::glucose);
    if (!column || facts.encoding.empty() || facts.dialect.delimiter != ',') {
        return std::nullopt;
    }
    const bool behind_means_something = titles == 0 && *column + 1 < shape.columns.size() &&
                                        shape.columns[*column + 1].role != Role::ignored;
    std::optional<CutDecimals> first;
    std::size_t cut = 0;
    std::size_t levels = 0;
    for (std::size_t i = data; i < sample.size(); ++i) {
        const SampleRow& row = sample[i];
        if (*column >= row.cells.size() || row.cells[*column].empty() ||
            refused(row, shape.fields)) {
            continue;
        }
        ++levels;
        if (row.cells.size() > titles && cut_at(row, *column)) {
            ++cut;
            first = first.value_or(
                CutDecimals{row.cells[*column] + "," + row.cells[*column + 1], row.line, *column});
        }
    }
    const bool most = 2 * cut > levels && cut >= rows_to_tell_by;
    return most && !behind_means_something ? first : std::nullopt;
}

}  // namespace tracewright
