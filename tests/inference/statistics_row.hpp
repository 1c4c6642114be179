#pragma once

#include "source_folder.hpp"

#include <cctype>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace tracewright::testing {

/// One row of tests/data/statistics-checks.csv.
struct StatisticsRow {
    std::string id, method, input, expected, tolerance, source;

    /// Every number that stands by itself in `text`, in order; "p 0.05", "1..3", "a=2", "(7)".
    static std::vector<double> numbers_in(std::string text) {
        for (auto at = text.find(".."); at != std::string::npos; at = text.find("..")) {
            text.replace(at, 2, "  ");  // "from..to"
        }
        std::vector<double> found;
        for (std::size_t i = 0; i < text.size();) {
            const bool minus =
                text[i] == '-' && i + 1 < text.size() &&
                (std::isdigit(static_cast<unsigned char>(text[i + 1])) != 0 || text[i + 1] == '.');
            const bool digit = std::isdigit(static_cast<unsigned char>(text[i])) != 0;
            const bool point = text[i] == '.' && i + 1 < text.size() &&
                               std::isdigit(static_cast<unsigned char>(text[i + 1])) != 0;
            if (!minus && !digit && !point) {
                ++i;
                continue;
            }
            const bool within_word =
                i > 0 && (std::isalnum(static_cast<unsigned char>(text[i - 1])) != 0);
            std::size_t end = i + (minus ? 1 : 0);
            bool seen_point = false;
            while (end < text.size()) {
                const char c = text[end];
                if (c == '.' && !seen_point && end + 1 < text.size()) {
                    seen_point = true;
                } else if (c == 'e' && end + 1 < text.size() && text[end + 1] == '-') {
                    ++end;
                } else if (std::isdigit(static_cast<unsigned char>(c)) == 0) {
                    break;
                }
                ++end;
            }
            const bool followed_by_word =
                end < text.size() && std::isalpha(static_cast<unsigned char>(text[end])) != 0;
            if (!within_word && !followed_by_word) {
                found.push_back(std::strtod(text.substr(i, end - i).c_str(), nullptr));
            }
            i = end;
        }
        return found;
    }
    /// The numbers of `expected` from the first that stands behind `word` on.
    std::vector<double> after(const std::string& word) const {
        const auto at = expected.find(word);
        if (at == std::string::npos) {
            throw std::out_of_range(id + ": no '" + word + "' in " + expected);
        }
        return numbers_in(expected.substr(at + word.size()));
    }
    std::vector<double> numbers() const { return numbers_in(expected); }
    std::vector<double> inputs() const { return numbers_in(input); }
};

/// The row of an id; std::out_of_range if there is none.
inline StatisticsRow statistics_row(const std::string& id) {
    std::ifstream file(std::string(TRACEWRIGHT_SOURCE_FOLDER) +
                       "/tests/data/statistics-checks.csv");
    std::string line;
    while (std::getline(file, line)) {
        if (!line.starts_with(id + ",")) {
            continue;
        }
        std::vector<std::string> cells(1);
        bool quoted = false;
        for (const char c : line) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.emplace_back();
            } else {
                cells.back() += c;
            }
        }
        return {cells.at(0), cells.at(1), cells.at(2), cells.at(3), cells.at(4), cells.at(5)};
    }
    throw std::out_of_range("no check row " + id);
}

}  // namespace tracewright::testing
