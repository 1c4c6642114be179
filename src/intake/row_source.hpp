#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// How a spreadsheet or a text wrote one cell.
enum class CellForm : std::uint8_t {
    text,    ///< plain text of a delimited file, or a text cell
    quoted,  ///< a quoted field of a delimited file
    number,  ///< a spreadsheet number; `text` is its shortest exact decimal form
    date,    ///< a spreadsheet number whose cell style is a date or a time; `text` as for number
    error    ///< a spreadsheet error such as #VALUE!
};

/// One cell, before any meaning. `text` is UTF-8 with quotes resolved, not trimmed.
struct Cell {
    std::string_view text;
    std::uint32_t column = 1;  ///< text: 1-based character of the line it starts at; sheet: column
    CellForm form = CellForm::text;
};

/// What is wrong with a row as a row of text.
enum class RowFault : std::uint8_t { none, unclosed_quote, field_too_long, line_too_long };

/// One row. Views are good until the next call to the source.
struct Row {
    std::uint32_t line = 0;       ///< 1-based line (text) or row (sheet) at which it starts
    std::span<const Cell> cells;  ///< none where the row has a fault
    RowFault fault = RowFault::none;
    std::uint32_t fault_column = 0;
};

/// How a delimited text is written.
struct Dialect {
    char delimiter = ',';
    char quote = '"';
    bool named_by_file = false;  ///< by a first line "sep=;"
};

/// A sheet of the workbook beside the one that is read.
struct OtherSheet {
    std::string name;
    std::uint64_t rows = 0;  ///< that hold anything
};

/// What was found out about a file before its cells mean anything.
struct SourceFacts {
    std::string file;      ///< as given
    std::string kind;      ///< "delimited text", "xlsx workbook", "xls workbook"
    std::string encoding;  ///< "UTF-8", "UTF-16LE", "GB 18030", "Windows-1252"; empty for sheets
    std::string encoding_sure;  ///< in words: "certain: byte order mark", "likely: valid UTF-8"
    Dialect dialect;
    std::string sheet;             ///< name of the sheet read
    std::uint64_t sheet_rows = 0;  ///< of it, that hold anything
    std::vector<OtherSheet> other_sheets;
    bool serial_1904 = false;  ///< the workbook counts dates from 1904
};

/// Rows of one table in file order, as often as asked. Reading twice gives the same rows.
class RowSource {
  public:
    virtual ~RowSource() = default;
    virtual const SourceFacts& facts() const = 0;
    /// False after the last row. Wholly blank lines come as rows without cells.
    virtual bool next(Row& row) = 0;
    virtual void rewind() = 0;
    /// The decoded text of a delimited file, for readers that scan it themselves; empty for sheets.
    virtual std::string_view text() const { return {}; }
};

}  // namespace tracewright
