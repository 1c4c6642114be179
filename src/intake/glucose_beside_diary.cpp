#include "intake/glucose_beside_diary.hpp"

#include "intake/likeliest_glucose.hpp"
#include "intake/number_text.hpp"

namespace tracewright {

namespace {

bool says_words(const TableShape& shape, const std::vector<std::string>& cells) {
    for (std::size_t c = 0; c < cells.size() && c < shape.columns.size(); ++c) {
        const Role role = shape.columns[c].role;
        const bool of_amounts = role >= Role::carbohydrate && role <= Role::energy;
        if (role >= Role::meal_text && role <= Role::note && !of_amounts && role != Role::minutes &&
            role != Role::steps && role != Role::sleep_hours && !cells[c].empty()) {
            return true;
        }
    }
    return false;
}

// Most of its numbers stand beside words of the diary, whose amounts they may be.
bool goes_with_words(const TableShape& shape, std::span<const SampleRow> data, std::size_t c) {
    std::size_t filled = 0;
    std::size_t beside = 0;
    for (const SampleRow& row : data) {
        const auto& cells = row.cells;
        if (c >= cells.size() || cells[c].empty()) {
            continue;
        }
        ++filled;
        beside += says_words(shape, cells) ? 1U : 0U;
    }
    return 2 * beside > filled;
}

}  // namespace

std::vector<std::size_t> glucose_beside_diary(const TableShape& shape,
                                              std::span<const ColumnContent> contents,
                                              std::span<const SampleRow> data) {
    std::vector<std::size_t> by_unit;
    for (const std::size_t c : shape.all(Role::ignored)) {
        if (is_unit_alone(shape.columns[c].title) && !contents[c].numbers.empty()) {
            by_unit.push_back(c);
        }
    }
    if (!by_unit.empty()) {
        return by_unit;
    }
    auto likeliest = likeliest_glucose(shape.columns, contents);
    std::erase_if(likeliest, [&](std::size_t c) {
        const bool values =
            shape.columns[c].role == Role::value && !goes_with_words(shape, data, c);
        return !values && !contents[c].counts.contains(Content::limit_word);
    });
    return likeliest;
}

}  // namespace tracewright
