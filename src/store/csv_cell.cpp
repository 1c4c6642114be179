#include "store/csv_cell.hpp"

#include "diary/formula_mark.hpp"

namespace tracewright {

std::string csv_cell(const std::string& text) {
    const bool formula = begins_a_formula(text);
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
