#include "store/csv_cell.hpp"

#include <string_view>

namespace tracewright {

std::string csv_cell(const std::string& text) {
    constexpr std::string_view begins_a_formula = "=+-@\t\r";
    const bool formula = !text.empty() && begins_a_formula.find(text.front()) != std::string::npos;
    if (!formula && text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string cell = formula ? "\"'" : "\"";
    for (const char sign : text) {
        cell += sign == '"' ? "\"\"" : std::string(1, sign);
    }
    return cell + "\"";
}

}  // namespace tracewright
