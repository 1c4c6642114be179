#include "intake/delimited_source.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstring>
#include <map>

namespace tracewright {

namespace {

constexpr std::array delimiters{';', '\t', '|', ','};
constexpr std::size_t lines_looked_at = 200;

// "sep=;" on the first line, as spreadsheets write it.
std::optional<char> named_delimiter(std::string_view text) {
    if (text.size() < 5 ||
        !(text.starts_with("sep=") || text.starts_with("SEP=") || text.starts_with("Sep="))) {
        return std::nullopt;
    }
    const bool alone = text.size() == 5 || text[5] == '\n' || text[5] == '\r';
    return alone ? std::optional{text[4]} : std::nullopt;
}

std::size_t after_line(std::string_view text, std::size_t at) {
    at = text.find_first_of("\r\n", at);
    if (at == std::string_view::npos) {
        return text.size();
    }
    return at + (text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n' ? 2 : 1);
}

// Field counts of the first rows when split at `delimiter`, quotes obeyed.
std::vector<std::size_t> field_counts(std::string_view text, char delimiter) {
    std::vector<std::size_t> counts;
    std::size_t fields = 1;
    bool quoted = false;
    bool anything = false;
    bool field_start = true;
    for (std::size_t i = 0; i < text.size() && counts.size() < lines_looked_at; ++i) {
        const char c = text[i];
        if (quoted) {
            quoted = c != '"';
            continue;
        }
        if (c == '"' && field_start) {
            quoted = true;
            anything = true;
        } else if (c == '\n' || c == '\r') {
            if (anything) {
                counts.push_back(fields);
            }
            fields = 1;
            anything = false;
            field_start = true;
            continue;
        } else if (c == delimiter) {
            ++fields;
            anything = true;
            field_start = true;
            continue;
        } else if (c != ' ') {
            anything = true;
        }
        field_start = field_start && c == ' ';
    }
    if (anything) {
        counts.push_back(fields);
    }
    return counts;
}

// The same for all delimiters at once, where no quote stands in those rows; else empty.
std::optional<std::array<std::vector<std::size_t>, delimiters.size()>> unquoted_field_counts(
    std::string_view text) {
    std::array<std::vector<std::size_t>, delimiters.size()> counts;
    std::array<std::size_t, delimiters.size()> fields{1, 1, 1, 1};
    bool anything = false;
    const auto close = [&] {
        for (std::size_t d = 0; d < fields.size(); ++d) {
            if (anything) {
                counts[d].push_back(fields[d]);
            }
            fields[d] = 1;
        }
        anything = false;
    };
    for (std::size_t i = 0; i < text.size() && counts[0].size() < lines_looked_at; ++i) {
        const char c = text[i];
        if (c == '"') {
            return std::nullopt;
        }
        if (c == '\n' || c == '\r') {
            close();
            continue;
        }
        for (std::size_t d = 0; d < fields.size(); ++d) {
            fields[d] += c == delimiters[d] ? 1U : 0U;
        }
        anything = anything || c != ' ';
    }
    if (counts[0].size() < lines_looked_at) {
        close();
    }
    return counts;
}

// How many rows share the most common count of two fields or more, and that count.
struct Constancy {
    std::size_t rows = 0;
    std::size_t fields = 0;
};

Constancy constancy_of(const std::vector<std::size_t>& counts) {
    std::map<std::size_t, std::size_t> times;
    for (std::size_t i = 0; i < counts.size();) {
        std::size_t end = i + 1;
        while (end < counts.size() && counts[end] == counts[i]) {
            ++end;
        }
        times[counts[i]] += end - i;
        i = end;
    }
    Constancy best;
    for (const auto& [fields, rows] : times) {
        if (fields >= 2 && rows > best.rows) {
            best = {rows, fields};
        }
    }
    return best;
}

}  // namespace

Dialect dialect_of(std::string_view text) {
    if (const auto named = named_delimiter(text)) {
        return {*named, '"', true};
    }
    Dialect dialect;
    Constancy best;
    const auto unquoted = unquoted_field_counts(text);
    for (std::size_t d = 0; d < delimiters.size(); ++d) {
        const Constancy found =
            constancy_of(unquoted ? (*unquoted)[d] : field_counts(text, delimiters[d]));
        if (found.rows > best.rows) {
            best = found;
            dialect.delimiter = delimiters[d];
        }
    }
    return dialect;
}

DelimitedSource::DelimitedSource(std::string text, SourceFacts facts, std::optional<char> delimiter)
    : text_(std::move(text)), facts_(std::move(facts)) {
    facts_.kind = "delimited text";
    facts_.dialect = dialect_of(text_);
    if (facts_.dialect.named_by_file) {
        begin_ = after_line(text_, 0);
        first_line_ = 2;
    }
    if (delimiter) {
        facts_.dialect.delimiter = *delimiter;
    }
    rewind();
}

void DelimitedSource::rewind() {
    seek(begin_, first_line_);
}

void DelimitedSource::seek(std::size_t offset, std::uint32_t line) {
    at_ = offset;
    line_ = line;
}

// 1-based, in characters. Offsets within a line only grow, so each character is counted once.
std::uint32_t DelimitedSource::column_of(std::size_t offset) {
    for (; counted_to_ < offset; ++counted_to_) {
        characters_ += (static_cast<unsigned char>(text_[counted_to_]) & 0xC0U) != 0x80U ? 1U : 0U;
    }
    return characters_ + 1;
}

bool DelimitedSource::next(Row& row) {
    cells_.clear();
    unescaped_.clear();
    row = Row{line_, {}, RowFault::none, 0};
    if (at_ >= text_.size()) {
        return false;
    }
    line_start_ = at_;
    counted_to_ = at_;
    characters_ = 0;
    if (text_[at_] == '\n' || text_[at_] == '\r') {
        skip_line();
        return true;  // a blank line
    }
    const std::uint32_t first_line = line_;
    const std::size_t start = at_;
    FieldEnd end = FieldEnd::delimiter;
    while (end == FieldEnd::delimiter && row.fault == RowFault::none) {
        end = read_field(row);
        if (end == FieldEnd::delimiter && at_ - start > most_line_bytes) {
            row.fault = RowFault::line_too_long;
            row.fault_column = 1;
        }
    }
    if (row.fault != RowFault::none) {
        skip_line();     // what follows may be good
        cells_.clear();  // a byte belongs to one row
    }
    row.line = first_line;
    row.cells = cells_;
    return true;
}

DelimitedSource::FieldEnd DelimitedSource::read_field(Row& row) {
    if (at_ < text_.size() && text_[at_] == facts_.dialect.quote) {
        return read_quoted(row);
    }
    const std::size_t start = at_;
    const char delimiter = facts_.dialect.delimiter;
    while (at_ < text_.size() && text_[at_] != delimiter && text_[at_] != '\n' &&
           text_[at_] != '\r') {
        ++at_;
    }
    if (at_ - start > most_field_bytes) {
        row.fault = RowFault::field_too_long;
        row.fault_column = column_of(start);
        return FieldEnd::line;
    }
    cells_.push_back(
        {std::string_view(text_).substr(start, at_ - start), column_of(start), CellForm::text});
    return end_of_field();
}

// The first quote at or behind `from` that isn't doubled; the fault if there is none near enough.
std::optional<std::size_t> DelimitedSource::closing_quote(std::size_t from, RowFault& fault) const {
    const char quote = facts_.dialect.quote;
    std::size_t end = text_.find(quote, from);
    while (end != std::string::npos && end + 1 < text_.size() && text_[end + 1] == quote &&
           end - from <= most_field_bytes) {
        end = text_.find(quote, end + 2);
    }
    if (end == std::string::npos) {
        fault = RowFault::unclosed_quote;
        return std::nullopt;
    }
    if (end - from > most_field_bytes) {
        fault = RowFault::field_too_long;
        return std::nullopt;
    }
    return end;
}

DelimitedSource::FieldEnd DelimitedSource::read_quoted(Row& row) {
    const char quote = facts_.dialect.quote;
    const std::uint32_t column = column_of(at_);
    const std::size_t start = at_ + 1;
    const auto closing = closing_quote(start, row.fault);
    if (!closing) {
        row.fault_column = column;
        return FieldEnd::line;
    }
    const std::size_t end = *closing;
    std::string_view content = std::string_view(text_).substr(start, end - start);
    const bool doubled = content.find(quote) != std::string_view::npos;
    for (std::size_t i = start; i < end; ++i) {
        const bool breaks =
            text_[i] == '\n' || (text_[i] == '\r' && !(i + 1 < end && text_[i + 1] == '\n'));
        line_ += breaks ? 1U : 0U;
    }
    at_ = end + 1;
    const std::size_t tail = at_;
    while (at_ < text_.size() && text_[at_] != facts_.dialect.delimiter && text_[at_] != '\n' &&
           text_[at_] != '\r') {
        ++at_;
    }
    // Text behind a closing quote belongs to no field of RFC 4180; it stays visible in the cell.
    const std::string_view behind = std::string_view(text_).substr(tail, at_ - tail);
    const bool anything_behind = behind.find_first_not_of(' ') != std::string_view::npos;
    if (doubled || anything_behind) {
        std::string& plain = unescaped_.emplace_back();
        for (std::size_t i = 0; i < content.size(); ++i) {
            plain += content[i];
            i += content[i] == quote ? 1U : 0U;
        }
        plain += anything_behind ? behind : std::string_view();
        content = plain;
    }
    cells_.push_back({content, column, CellForm::quoted});
    return end_of_field();
}

DelimitedSource::FieldEnd DelimitedSource::end_of_field() {
    if (at_ >= text_.size()) {
        return FieldEnd::text;
    }
    if (text_[at_] == facts_.dialect.delimiter) {
        ++at_;
        if (at_ == text_.size()) {  // a delimiter as the last byte: one more, empty, field
            cells_.push_back({{}, column_of(at_), CellForm::text});
            return FieldEnd::text;
        }
        return FieldEnd::delimiter;
    }
    skip_line();
    return FieldEnd::line;
}

void DelimitedSource::skip_line() {
    at_ = after_line(text_, at_);
    ++line_;
}

}  // namespace tracewright
