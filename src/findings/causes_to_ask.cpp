#include "findings/causes_to_ask.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr double noted_enough = 0.7;
constexpr std::size_t rows_a_cause = 6;
constexpr std::size_t least_rows = 10;

// Rows that could be used if these causes were asked; empty unless the causes vary among them.
std::vector<const QuestionRow*> usable(std::span<const QuestionRow> rows,
                                       std::span<const Cause> causes) {
    std::vector<const QuestionRow*> found;
    for (const QuestionRow& row : rows) {
        const bool known = std::all_of(causes.begin(), causes.end(),
                                       [&](Cause cause) { return row.causes.contains(cause); });
        if (row.outcome && !row.ill && known) {
            found.push_back(&row);
        }
    }
    for (const Cause cause : causes) {
        const bool varies = std::any_of(found.begin(), found.end(), [&](const QuestionRow* row) {
            return row->causes.at(cause) != found.front()->causes.at(cause);
        });
        if (!varies) {
            return {};
        }
    }
    return found;
}

}  // namespace

std::vector<Cause> causes_to_ask(std::span<const QuestionRow> rows, std::span<const Cause> wanted) {
    const std::size_t readable = usable(rows, {}).size();
    std::vector<Cause> asked;
    for (const Cause cause : wanted) {
        std::vector<Cause> with = asked;
        with.push_back(cause);
        const auto of_this = static_cast<double>(usable(rows, std::array{cause}).size());
        const std::size_t of_all = usable(rows, with).size();
        if (of_this >= noted_enough * static_cast<double>(readable) && of_all >= least_rows &&
            of_all >= rows_a_cause * with.size()) {
            asked = std::move(with);
        }
    }
    return asked;
}

std::vector<double> ways_to_better_side(std::span<const QuestionRow> rows, Cause cause,
                                        bool less_of_it) {
    const auto counts = [&](const QuestionRow& row) {
        return row.outcome && !row.ill && row.causes.contains(cause);
    };
    std::vector<double> values;
    for (const QuestionRow& row : rows) {
        if (counts(row)) {
            values.push_back(row.causes.at(cause));
        }
    }
    std::vector<double> result(rows.size(), 0.0);
    if (values.empty()) {
        return result;
    }
    std::sort(values.begin(), values.end());
    const double middle = values[values.size() / 2];
    double sum = 0;
    double count = 0;
    for (const double value : values) {
        const bool better = less_of_it ? value < middle : value > middle;
        sum += better ? value : 0;
        count += better ? 1 : 0;
    }
    const double target = count > 0 ? sum / count : (less_of_it ? values.front() : values.back());
    const double most = std::abs(facts_of(cause).change_size);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (!counts(rows[i])) {
            continue;
        }
        const double way = target - rows[i].causes.at(cause);
        result[i] = (less_of_it ? way < 0 : way > 0) ? std::clamp(way, -most, most) : 0;
    }
    return result;
}

}  // namespace tracewright
