#pragma once

#include "intake/column_title.hpp"
#include "intake/read_row.hpp"
#include "intake/row_cells.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What the writers of a row's entries share: its cells by role, and how their texts and remarks
/// are kept. `meal` picks the columns of one meal of `TableShape::meals`.
class EntryWriter {
  public:
    EntryWriter(const RowCells& row_cells, const ReadingPlan& reading_plan, ReadRow& read_row)
        : cells(row_cells), plan(reading_plan), row(read_row) {}

    /// A new entry of the row. Holds until the next is added.
    RowEntry& add(DiaryKind kind);
    bool has(DiaryKind kind) const;

    const ColumnGuess& column(std::size_t c) const { return plan.shape.columns[c]; }
    std::string kept_text(std::size_t c);
    std::string all_texts(Role role, std::size_t meal = 0);
    /// The first filled column of a role; what stands in others is told as not read.
    std::optional<std::size_t> taken(Role role, std::size_t meal = 0);
    /// The same where all say one thing in several units.
    std::optional<std::size_t> filled(Role role, std::size_t meal = 0) const;
    std::optional<double> number_in(std::optional<std::size_t> c) const;
    void warn(std::size_t c, const char* code, std::string expected);

    const RowCells& cells;
    const ReadingPlan& plan;
    ReadRow& row;
};

/// Two texts of one entry as one.
void join(std::string& text, const std::string& more);

/// A cell's words for nothing: "n/a", "none".
bool is_empty_word(std::string_view text);

}  // namespace tracewright
