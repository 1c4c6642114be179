#include "intake/entry_writer.hpp"

#include "diary/formula_mark.hpp"
#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

constexpr std::array empty_words{"na", "n/a", "null", "none", "nan", "nil", "#n/a", "/", "#value!"};

}  // namespace

bool is_empty_word(std::string_view text) {
    const std::string word = lower_case(text);
    return std::find(empty_words.begin(), empty_words.end(), word) != empty_words.end();
}

void join(std::string& text, const std::string& more) {
    text += text.empty() || more.empty() ? more : " | " + more;
}

RowEntry& EntryWriter::add(DiaryKind kind) {
    RowEntry& entry = row.entries.emplace_back();
    entry.what.kind = kind;
    return entry;
}

bool EntryWriter::has(DiaryKind kind) const {
    return std::ranges::any_of(row.entries,
                               [&](const RowEntry& told) { return told.what.kind == kind; });
}

std::string EntryWriter::kept_text(std::size_t c) {
    const std::string_view text = without_formula_mark(cells.raw(c));
    if (has_broken_characters(text)) {
        row.remarks.push_back({row.line, cells.at(c), Fate::stored, "broken_characters",
                               "characters without a meaning", "text"});
    }
    return without_controls(text);
}

std::string EntryWriter::all_texts(Role role, std::size_t meal) {
    std::string text;
    for (std::size_t c = 0; c < plan.shape.columns.size(); ++c) {
        if (column(c).role == role && column(c).meal == meal && cells.filled(c) &&
            !is_empty_word(cells.text(c))) {
            join(text, kept_text(c));
        }
    }
    return text;
}

std::optional<std::size_t> EntryWriter::taken(Role role, std::size_t meal) {
    std::optional<std::size_t> first;
    for (std::size_t c = 0; c < plan.shape.columns.size(); ++c) {
        if (column(c).role != role || column(c).meal != meal || !cells.filled(c)) {
            continue;
        }
        if (!first) {
            first = c;
        } else if (!is_empty_word(cells.text(c))) {
            row.unread.push_back(c);
        }
    }
    return first;
}

std::optional<std::size_t> EntryWriter::filled(Role role, std::size_t meal) const {
    for (std::size_t c = 0; c < plan.shape.columns.size(); ++c) {
        if (column(c).role == role && column(c).meal == meal && cells.filled(c)) {
            return c;
        }
    }
    return std::nullopt;
}

std::optional<double> EntryWriter::number_in(std::optional<std::size_t> c) const {
    const auto found = c ? written_number(cells.text(*c), plan.decimal_mark) : std::nullopt;
    return found ? std::optional{found->value()} : std::nullopt;
}

void EntryWriter::warn(std::size_t c, const char* code, std::string expected) {
    row.remarks.push_back(
        {row.line, cells.at(c), Fate::stored, code, quoted(cells.text(c)), std::move(expected)});
}

}  // namespace tracewright
