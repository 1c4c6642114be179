#pragma once

#include "intake/column_title.hpp"
#include "intake/sample_row.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What one column was taken for, and on what grounds.
struct ColumnGuess {
    std::string title;
    Role role = Role::ignored;
    std::optional<GlucoseUnit> unit;
    double minutes_per_unit = 1;
    bool exchanges = false;
    std::optional<WrittenOffset> offset;  ///< of its times, as the title says
    std::size_t meal = 0;                 ///< which of `TableShape::meals` its title names
    std::optional<TitledMeal> names;      ///< the meal of its title, whatever the column holds
    bool by_title = false;                ///< else by content
    bool unread_clock = false;            ///< titled as times of day, and most of it is none
    bool numbers_untitled = false;  ///< ignored though numbers stand in it: no title says of what
};

/// A level cut in two by a comma that was its decimal mark.
struct CutDecimals {
    std::string sample;  ///< "6,9"
    std::uint32_t line = 0;
    std::size_t column = 0;  ///< of its first part
};

/// A meal of the day that titles name ("Dinner", "Dinner carbs"). What no title names is the first,
/// without a name.
struct MealOfRow {
    std::string name;
    std::string_view slot;  ///< "breakfast", "lunch", "dinner", "snack"; empty if none is named
};

/// Where a table begins and what its columns are.
struct TableShape {
    std::optional<std::uint32_t> header_line;  ///< last header row; none: no header
    std::uint32_t first_data_line = 0;
    std::uint32_t preamble_rows = 0;  ///< title rows before the header, blank lines not counted
    std::uint32_t header_rows = 0;
    std::size_t fields = 0;  ///< columns of the block
    std::vector<ColumnGuess> columns;
    std::optional<std::string> serial_times;  ///< times are numbers of days, such as this one
    std::optional<CutDecimals> cut_decimals;  ///< what a level seems to have lost
    /// Where no title says which column is glucose: two or more that could be, the first of them
    /// taken until it is asked.
    std::vector<std::size_t> may_be_glucose;
    std::optional<std::size_t> offset_by_title;  ///< the column whose title says that of all times
    std::vector<MealOfRow> meals{MealOfRow{}};
    bool times_begin_sleep = false;  ///< a row's own time is that of going to bed
    bool unit_by_column = false;     ///< titles of glucose columns name two units: each has its own
    bool has_time = false;
    bool has_glucose = false;
    bool has_diary = false;

    /// Index of the first column of a role.
    std::optional<std::size_t> first(Role role) const;
    std::vector<std::size_t> all(Role role) const;
};

/// What the user named: a header line, a time or glucose column by title or 1-based number.
struct ShapeOptions {
    std::optional<std::uint32_t> header_line;
    std::optional<std::string> time_column;
    std::optional<std::string> glucose_column;
    bool by_meter = false;  ///< the levels are finger-pricks
};

/// Whether an option's words name this column, by its title or as its number (from 1).
bool names_column(const std::string& wanted, const std::string& title, std::size_t index);

/// Finds data by content (a time beside something else), the header above it, and each column's
/// role by its title, else by what is in it.
TableShape table_shape(const std::vector<SampleRow>& sample, const SourceFacts& facts,
                       const ShapeOptions& options = {});

}  // namespace tracewright
