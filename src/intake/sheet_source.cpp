#include "intake/workbook.hpp"

#include <algorithm>
#include <charconv>

namespace tracewright {

namespace {

bool has_table(const Sheet& sheet) {
    return std::count_if(sheet.rows.begin(), sheet.rows.end(),
                         [](const SheetRow& row) { return row.cells.size() >= 2; }) >= 2;
}

bool has_anything(const Sheet& sheet) {
    return std::any_of(sheet.rows.begin(), sheet.rows.end(),
                       [](const SheetRow& row) { return !row.cells.empty(); });
}

std::uint64_t filled_rows(const Sheet& sheet) {
    return static_cast<std::uint64_t>(
        std::ranges::count_if(sheet.rows, [](const SheetRow& row) { return !row.cells.empty(); }));
}

using Sheets = std::vector<Sheet>;

Sheets::iterator chosen(Sheets& sheets, const std::optional<std::string>& wanted) {
    if (!wanted) {
        const auto table = std::find_if(sheets.begin(), sheets.end(), has_table);
        return table != sheets.end() ? table
                                     : std::find_if(sheets.begin(), sheets.end(), has_anything);
    }
    const auto by_name = std::find_if(sheets.begin(), sheets.end(),
                                      [&](const Sheet& sheet) { return sheet.name == *wanted; });
    if (by_name != sheets.end()) {
        return by_name;
    }
    std::size_t number = 0;
    const auto [end, error] =
        std::from_chars(wanted->data(), wanted->data() + wanted->size(), number);
    const bool is_number = error == std::errc{} && end == wanted->data() + wanted->size();
    return is_number && number >= 1 && number <= sheets.size()
               ? sheets.begin() + static_cast<std::ptrdiff_t>(number - 1)
               : sheets.end();
}

std::string names_of(const Sheets& sheets) {
    std::string names;
    for (const Sheet& sheet : sheets) {
        names += (names.empty() ? "" : ", ") + sheet.name;
    }
    return names;
}

}  // namespace

tl::expected<SheetSource, FileError> SheetSource::of(Workbook workbook, const std::string& file,
                                                     const std::optional<std::string>& sheet) {
    const auto found = chosen(workbook.sheets, sheet);
    if (found == workbook.sheets.end()) {
        FileError error{FileErrorKind::not_a_table, file, 0, 0, {}, {}, {}};
        error.found =
            sheet ? "sheets " + names_of(workbook.sheets) : "a workbook without a filled cell";
        error.expected =
            sheet ? "a sheet '" + *sheet + "'" : "a sheet with rows of times and values";
        return tl::make_unexpected(error);
    }
    SourceFacts facts;
    facts.file = file;
    facts.kind = workbook.kind;
    facts.sheet = found->name;
    facts.sheet_rows = filled_rows(*found);
    facts.serial_1904 = workbook.serial_1904;
    for (const Sheet& other : workbook.sheets) {
        if (&other != &*found) {
            facts.other_sheets.push_back({other.name, filled_rows(other)});
        }
    }
    return SheetSource(std::move(*found), std::move(facts));
}

SheetSource::SheetSource(Sheet sheet, SourceFacts facts)
    : sheet_(std::move(sheet)), facts_(std::move(facts)) {
    for (const SheetRow& row : sheet_.rows) {
        width_ = std::max(width_, row.cells.empty() ? 0 : row.cells.back().column);
    }
}

// Every row is as wide as the sheet: cells that the sheet leaves out come as empty ones.
bool SheetSource::next(Row& row) {
    cells_.clear();
    row = Row{};
    if (at_ >= sheet_.rows.size()) {
        return false;
    }
    const SheetRow& source = sheet_.rows[at_++];
    row.line = source.line;
    if (source.cells.empty()) {
        return true;  // a blank row
    }
    for (std::uint32_t column = 1; column <= width_; ++column) {
        cells_.push_back({{}, column, CellForm::text});
    }
    for (const SheetCell& cell : source.cells) {
        cells_[cell.column - 1] = {cell.text, cell.column, cell.form};
    }
    row.cells = cells_;
    return true;
}

}  // namespace tracewright
