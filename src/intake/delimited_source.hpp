#pragma once

#include "intake/row_source.hpp"

#include <deque>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// The dialect of a text: the delimiter among , ; TAB and | that gives the most constant number of
/// fields over the first 200 lines that are not empty, outside quotes; a first line "sep=;" is
/// obeyed. A text without any of them has one column and the comma.
Dialect dialect_of(std::string_view text);

/// Rows of a delimited text. RFC 4180 is the base: quotes with line breaks inside, doubled quotes;
/// CRLF, LF and CR line ends in any mixture. A quote that never closes is a fault of its row, and
/// reading resumes on the line after the one it opened on; a row that is too long ends on the line
/// where it became so. Linear in the text: no line is read twice, and a search that found no
/// closing quote passed even runs of quotes only, each of which closes itself. Cells are views into
/// the text, except quoted ones with doubled quotes.
class DelimitedSource final : public RowSource {
  public:
    DelimitedSource(std::string text, SourceFacts facts, std::optional<char> delimiter);

    const SourceFacts& facts() const override { return facts_; }
    bool next(Row& row) override;
    void rewind() override;
    std::string_view text() const override { return text_; }

    /// Where the next row begins: byte offset and 1-based line.
    std::size_t offset() const { return at_; }
    std::uint32_t line() const { return line_; }
    /// Goes on from a row's beginning.
    void seek(std::size_t offset, std::uint32_t line);

    static constexpr std::size_t most_field_bytes = std::size_t{1} << 20;
    static constexpr std::size_t most_line_bytes = std::size_t{1} << 24;

  private:
    enum class FieldEnd { delimiter, line, text };
    FieldEnd read_field(Row& row);
    FieldEnd read_quoted(Row& row);
    std::optional<std::size_t> closing_quote(std::size_t from, RowFault& fault) const;
    FieldEnd end_of_field();
    void skip_line();
    std::uint32_t column_of(std::size_t offset);

    std::string text_;
    SourceFacts facts_;
    std::size_t begin_ = 0;  // after a "sep=" line
    std::uint32_t first_line_ = 1;
    std::size_t at_ = 0;
    std::uint32_t line_ = 1;
    std::size_t line_start_ = 0;
    std::size_t counted_to_ = 0;  // characters of the line counted up to here
    std::uint32_t characters_ = 0;
    std::vector<Cell> cells_;
    std::deque<std::string> unescaped_;
};

}  // namespace tracewright
