#include "intake/serial_columns.hpp"

#include <algorithm>
#include <charconv>

namespace tracewright {

namespace {

constexpr double least = 20'000;
constexpr double most = 80'000;
constexpr std::size_t to_tell_by = 2;

std::string with_point(std::string text) {
    std::ranges::replace(text, ',', '.');
    return text;
}

std::optional<double> number_in(const std::string& text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool whole = error == std::errc{} && end == text.data() + text.size();
    return whole ? std::optional{value} : std::nullopt;
}

bool is_serial(const SampleRow& row, std::size_t column) {
    const auto number = number_in(with_point(row.cells[column]));
    return number && *number >= least && *number <= most;
}

bool has_fraction(const std::string& cell) {
    return cell.find_first_of(".,") != std::string::npos;
}

bool holds_serials(const std::vector<SampleRow>& sample, std::size_t column) {
    std::size_t with_fraction = 0;
    for (const SampleRow& row : sample) {
        if (column >= row.cells.size() || row.cells[column].empty()) {
            continue;
        }
        const std::string& cell = row.cells[column];
        if (is_serial(row, column)) {
            with_fraction += has_fraction(cell) ? 1U : 0U;
        } else if (number_in(with_point(cell))) {
            return false;
        }
    }
    return with_fraction >= to_tell_by;
}

}  // namespace

std::optional<SerialColumns> serial_columns(const std::vector<SampleRow>& sample) {
    std::size_t width = 0;
    for (const SampleRow& row : sample) {
        width = std::max(width, row.cells.size());
    }
    SerialColumns found;
    for (std::size_t c = 0; c < width; ++c) {
        if (!holds_serials(sample, c)) {
            continue;
        }
        if (found.sample.empty()) {
            found.sample = sample;
        }
        for (SampleRow& row : found.sample) {
            if (c < row.cells.size() && is_serial(row, c)) {
                found.first = found.first.empty() ? row.cells[c] : found.first;
                row.cells[c] = with_point(row.cells[c]);
                row.forms[c] = CellForm::date;
            }
        }
    }
    return found.sample.empty() ? std::nullopt : std::optional{std::move(found)};
}

}  // namespace tracewright
