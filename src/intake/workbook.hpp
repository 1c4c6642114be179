#pragma once

#include "intake/file_error.hpp"
#include "intake/row_source.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// A spreadsheet's cells as written, in memory.
struct SheetCell {
    std::string text;
    std::uint32_t column = 1;
    CellForm form = CellForm::text;
};

struct SheetRow {
    std::uint32_t line = 1;
    std::vector<SheetCell> cells;  ///< ascending by column; empty cells are left out
};

struct Sheet {
    std::string name;
    std::vector<SheetRow> rows;
};

struct Workbook {
    std::string kind;  ///< "xlsx workbook", "xls workbook"
    std::vector<Sheet> sheets;
    bool serial_1904 = false;
};

/// Reads an .xlsx (a zip of XML). Refuses members that unpack to more than 512 MiB.
tl::expected<Workbook, FileError> xlsx_workbook(std::string_view bytes, const std::string& name);

/// Reads an old .xls by FreeXL in a child process of its own, with bounded time and memory: that
/// library is C on input that may be hostile, and a crash must stay an error (docs/decisions).
tl::expected<Workbook, FileError> xls_workbook(std::string_view bytes, const std::string& name);

/// Rows of one sheet: the one asked for by name or 1-based number, else the first that has a table
/// (two rows of two cells), else the first that has anything.
class SheetSource final : public RowSource {
  public:
    static tl::expected<SheetSource, FileError> of(Workbook workbook, const std::string& file,
                                                   const std::optional<std::string>& sheet);

    const SourceFacts& facts() const override { return facts_; }
    bool next(Row& row) override;
    void rewind() override { at_ = 0; }

  private:
    SheetSource(Sheet sheet, SourceFacts facts);

    Sheet sheet_;
    SourceFacts facts_;
    std::uint32_t width_ = 0;
    std::size_t at_ = 0;
    std::vector<Cell> cells_;
};

}  // namespace tracewright
