#pragma once

#include "units/glucose.hpp"

#include <string>
#include <vector>

namespace tracewright {

enum class DateStyle {
    iso,                 ///< 2026-01-05 07:15
    iso_with_offset,     ///< 2026-01-05T07:15:00+01:00
    day_first_dots,      ///< 05.01.2026 07:15
    month_first_slashes  ///< 01/05/2026 7:15 AM
};

enum class FileEncoding { utf_8, utf_8_marked, windows_1252, utf_16_le };

/// How a file that a coach receives is written. None is any program's format: they are the ways in
/// which spreadsheets and people write.
struct FileDialect {
    char delimiter = ',';
    bool decimal_comma = false;
    DateStyle date_style = DateStyle::iso;
    bool date_and_clock_apart = false;
    bool german = false;  ///< column titles
    FileEncoding encoding = FileEncoding::utf_8;
    bool carriage_returns = false;
    bool workbook = false;   ///< .xlsx; the marks above are then without meaning, but the titles
    bool title_rows = true;  ///< lines above the header
    bool newest_first = false;
    int repeated_rows = 0;    ///< written twice
    bool row_of_abc = false;  ///< one reading is "abc"
    std::string low_text = "LOW";
    std::string high_text = "HIGH";
    std::string footer{};
};

/// A table before it is a file: cells are text, numbers among them already with their decimals.
struct WrittenTable {
    std::vector<std::string> titles;
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows;
    std::string footer{};
};

/// The table as the bytes of a delimited text. A cell that bears the delimiter, a quote or a line
/// break is quoted.
std::string delimited(const WrittenTable& table, const FileDialect& dialect);

/// The table as an .xlsx workbook on disk; cells that are plain numbers become numbers. The file's
/// own date of making is fixed, so that it is the same bytes each time. False if it can't be
/// written.
bool write_workbook(const WrittenTable& table, const std::string& path);

}  // namespace tracewright
