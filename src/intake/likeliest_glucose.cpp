#include "intake/likeliest_glucose.hpp"

#include "intake/column_title.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

bool names_a_time(const std::string& title) {
    const Role role = title_meaning(title).role;
    return role == Role::time || role == Role::date || role == Role::clock ||
           role == Role::end_time || role == Role::sleep_start || role == Role::sleep_end ||
           role == Role::meal_time;
}

// Numbers of rows are rather no levels.
bool counts_on(const std::vector<double>& numbers) {
    if (numbers.size() < 6) {
        return false;
    }
    const double step = numbers[1] > numbers[0] ? 1 : -1;
    return std::ranges::adjacent_find(numbers, [step](double a, double b) {
               return std::abs(b - a - step) > 1e-9;
           }) == numbers.end();
}

int how_much_it_says(const ColumnGuess& column, const ColumnContent& content) {
    return column.unit                                    ? 4
           : content.counts.contains(Content::limit_word) ? 3
           : column.role == Role::value                   ? 2
           : counts_on(content.numbers)                   ? 0
                                                          : 1;
}

}  // namespace

std::vector<std::size_t> likeliest_glucose(std::span<const ColumnGuess> columns,
                                           std::span<const ColumnContent> contents) {
    std::vector<std::size_t> likeliest;
    int most = -1;
    for (std::size_t c = 0; c < columns.size(); ++c) {
        const bool free = columns[c].role == Role::ignored || columns[c].role == Role::value;
        if (!free || names_a_time(columns[c].title) || !glucose_like(contents[c])) {
            continue;
        }
        const int says = how_much_it_says(columns[c], contents[c]);
        if (says > most) {
            most = says;
            likeliest.clear();
        }
        if (says == most) {
            likeliest.push_back(c);
        }
    }
    return likeliest;
}

}  // namespace tracewright
