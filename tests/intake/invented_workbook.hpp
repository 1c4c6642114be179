#pragma once

#include <xlsxwriter.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

#include <unistd.h>

namespace tracewright::testing {

/// A count of days in a cell whose style is a date.
struct SheetDay {
    double days;
};
/// Text, a number, or a date; empty text leaves the cell out.
using InventedCell = std::variant<std::string, double, SheetDay>;
struct InventedSheet {
    std::string name;
    std::vector<std::vector<InventedCell>> rows;
};

/// The bytes of an .xlsx of these sheets. Invented data only.
inline std::string workbook_of(const std::vector<InventedSheet>& sheets) {
    const auto path = std::filesystem::temp_directory_path() /
                      ("tracewright-invented-" + std::to_string(::getpid()) + ".xlsx");
    lxw_workbook* book = workbook_new(path.c_str());
    lxw_format* date = workbook_add_format(book);
    format_set_num_format(date, "dd.mm.yyyy hh:mm");
    for (const InventedSheet& invented : sheets) {
        lxw_worksheet* sheet = workbook_add_worksheet(book, invented.name.c_str());
        for (std::size_t r = 0; r < invented.rows.size(); ++r) {
            for (std::size_t c = 0; c < invented.rows[r].size(); ++c) {
                const auto row = static_cast<lxw_row_t>(r);
                const auto column = static_cast<lxw_col_t>(c);
                const InventedCell& cell = invented.rows[r][c];
                if (const auto* text = std::get_if<std::string>(&cell)) {
                    if (!text->empty()) {
                        worksheet_write_string(sheet, row, column, text->c_str(), nullptr);
                    }
                } else if (const auto* number = std::get_if<double>(&cell)) {
                    worksheet_write_number(sheet, row, column, *number, nullptr);
                } else {
                    worksheet_write_number(sheet, row, column, std::get<SheetDay>(cell).days, date);
                }
            }
        }
    }
    if (workbook_close(book) != LXW_NO_ERROR) {
        throw std::runtime_error("the invented workbook could not be written");
    }
    std::ostringstream bytes;
    bytes << std::ifstream(path, std::ios::binary).rdbuf();
    std::filesystem::remove(path);
    return bytes.str();
}

constexpr double second_of_march = 46083;  // 2026, from 30 December 1899

/// So many readings a quarter of an hour apart.
inline InventedSheet invented_wear(const std::string& name, int days_later, int readings) {
    InventedSheet sheet{name, {{"time", "glucose (mg/dL)"}}};
    for (int i = 0; i < readings; ++i) {
        sheet.rows.push_back({SheetDay{second_of_march + days_later + i / 96.0}, 120.0 + i % 17});
    }
    return sheet;
}

inline InventedSheet invented_meals(const std::string& name) {
    return {name,
            {{"time", "meal", "carbs (g)"},
             {SheetDay{second_of_march + 0.5}, "porridge", 40.0},
             {SheetDay{second_of_march + 0.8}, "rice", 60.0}}};
}

/// Bytes in a file that goes with this.
class InventedFile {
  public:
    explicit InventedFile(const std::string& bytes)
        : path_((std::filesystem::temp_directory_path() /
                 ("tracewright-file-" + std::to_string(::getpid()) + ".xlsx"))
                    .string()) {
        std::ofstream(path_, std::ios::binary) << bytes;
    }
    ~InventedFile() { std::filesystem::remove(path_); }
    InventedFile(const InventedFile&) = delete;
    InventedFile& operator=(const InventedFile&) = delete;
    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

}  // namespace tracewright::testing
