#include "file_dialect.hpp"

#include <xlsxwriter.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>

namespace tracewright {

namespace {

std::string quoted(const std::string& cell, char delimiter) {
    if (cell.find_first_of("\"\r\n") == std::string::npos &&
        cell.find(delimiter) == std::string::npos) {
        return cell;
    }
    std::string result = "\"";
    for (const char c : cell) {
        result += c;
        if (c == '"') {
            result += c;
        }
    }
    return result + '"';
}

// What the stories write is ASCII and Latin letters: code points below 0x800, so two bytes at most.
std::vector<std::uint16_t> code_points(const std::string& text) {
    std::vector<std::uint16_t> points;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if (byte < 0x80 || i + 1 == text.size()) {
            points.push_back(byte);
        } else {
            const auto next = static_cast<unsigned char>(text[++i]);
            points.push_back(static_cast<std::uint16_t>((byte & 0x1F) << 6 | (next & 0x3F)));
        }
    }
    return points;
}

std::string encoded(const std::string& text, FileEncoding encoding) {
    if (encoding == FileEncoding::utf_8) {
        return text;
    }
    if (encoding == FileEncoding::utf_8_marked) {
        return "\xEF\xBB\xBF" + text;
    }
    std::string result = encoding == FileEncoding::utf_16_le ? "\xFF\xFE" : "";
    for (const std::uint16_t point : code_points(text)) {
        result += static_cast<char>(point & 0xFF);
        if (encoding == FileEncoding::utf_16_le) {
            result += static_cast<char>(point >> 8);
        }
    }
    return result;
}

bool plain_number(const std::string& cell, double& value) {
    if (cell.empty() || cell.find_first_not_of("0123456789.") != std::string::npos) {
        return false;
    }
    char* end = nullptr;
    value = std::strtod(cell.c_str(), &end);
    return *end == '\0';
}

void write_row(lxw_worksheet* sheet, lxw_row_t row, const std::vector<std::string>& cells) {
    lxw_col_t column = 0;
    for (const std::string& cell : cells) {
        double value = 0;
        if (plain_number(cell, value)) {
            worksheet_write_number(sheet, row, column, value, nullptr);
        } else if (!cell.empty()) {
            worksheet_write_string(sheet, row, column, cell.c_str(), nullptr);
        }
        ++column;
    }
}

}  // namespace

std::string delimited(const WrittenTable& table, const FileDialect& dialect) {
    const std::string line_end = dialect.carriage_returns ? "\r\n" : "\n";
    std::string text;
    const auto add = [&](const std::vector<std::string>& cells) {
        for (std::size_t i = 0; i < cells.size(); ++i) {
            text += (i > 0 ? std::string(1, dialect.delimiter) : "") +
                    quoted(cells[i], dialect.delimiter);
        }
        text += line_end;
    };
    for (const std::string& title : table.titles) {
        add({title});
    }
    add(table.columns);
    for (const auto& row : table.rows) {
        add(row);
    }
    if (!table.footer.empty()) {
        add({table.footer});
    }
    return encoded(text, dialect.encoding);
}

bool write_workbook(const WrittenTable& table, const std::string& path) {
    lxw_workbook* book = workbook_new(path.c_str());
    if (book == nullptr) {
        return false;
    }
    lxw_doc_properties properties{};
    properties.created = 1776643200;  // 20 April 2026, the practice's today
    workbook_set_properties(book, &properties);
    lxw_worksheet* sheet = workbook_add_worksheet(book, "Invented");
    lxw_row_t row = 0;
    for (const std::string& title : table.titles) {
        write_row(sheet, row++, {title});
    }
    write_row(sheet, row++, table.columns);
    for (const auto& cells : table.rows) {
        write_row(sheet, row++, cells);
    }
    if (!table.footer.empty()) {
        write_row(sheet, row++, {table.footer});
    }
    return workbook_close(book) == LXW_NO_ERROR;
}

}  // namespace tracewright
