#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace tracewright::testing {

/// One row of a check table.
struct CheckRow {
    std::string id, measure, input, expected, tolerance, units, source, confirmed;

    /// The value of `name=` in the input, as text; std::out_of_range if it is not there.
    std::string text(const std::string& name) const {
        std::istringstream parts(input);
        for (std::string part; std::getline(parts, part, '|');) {
            if (part.starts_with(name + "=")) {
                return part.substr(name.size() + 1);
            }
        }
        throw std::out_of_range(id + ": no input " + name);
    }
    double number(const std::string& name) const { return std::stod(text(name)); }
    std::vector<double> list(const std::string& name) const { return numbers(text(name)); }
    std::vector<std::string> expected_texts() const { return split(expected, ';'); }
    double within() const { return std::stod(tolerance); }

    static std::vector<std::string> split(const std::string& text, char mark) {
        std::vector<std::string> parts;
        std::istringstream in(text);
        for (std::string part; std::getline(in, part, mark);) {
            parts.push_back(part);
        }
        return parts;
    }
    /// "100;25x65": a list in which NxV stands for N times V.
    static std::vector<double> numbers(const std::string& text) {
        std::vector<double> values;
        for (const std::string& part : split(text, ';')) {
            const auto times = part.find('x');
            const int count = times == std::string::npos ? 1 : std::stoi(part.substr(0, times));
            const std::string value = times == std::string::npos ? part : part.substr(times + 1);
            values.insert(values.end(), static_cast<std::size_t>(count), std::stod(value));
        }
        return values;
    }
};

inline std::vector<CheckRow> check_rows(const std::string& path) {
    std::ifstream file(path);
    if (!file) {
        throw std::runtime_error("no check table at " + path);
    }
    std::vector<CheckRow> rows;
    std::string line;
    std::getline(file, line);  // header
    while (std::getline(file, line)) {
        std::vector<std::string> cells(1);
        bool quoted = false;
        for (const char c : line) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.emplace_back();
            } else if (c != '\r') {
                cells.back() += c;
            }
        }
        if (cells.size() != 8) {
            throw std::runtime_error("check row of " + std::to_string(cells.size()) +
                                     " cells: " + line);
        }
        rows.push_back(
            {cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], cells[6], cells[7]});
    }
    return rows;
}

}  // namespace tracewright::testing
