#include "diary/table_cells.hpp"

namespace tracewright {

std::vector<std::vector<std::string>> table_cells(std::string_view csv) {
    std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        if (c == '"' && quoted && i + 1 < csv.size() && csv[i + 1] == '"') {
            rows.back().back() += '"';
            ++i;
        } else if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            rows.back().emplace_back();
        } else if (c == '\n' && !quoted) {
            rows.emplace_back(1);
        } else if (c != '\r') {
            rows.back().back() += c;
        }
    }
    return rows;
}

}  // namespace tracewright
