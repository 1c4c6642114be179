#pragma once

#include "intake/column_guesses.hpp"
#include "intake/table_shape.hpp"
#include "trace/reading.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What a plain file holds: one time and one number a row, nothing odd.
struct PlainRows {
    /// In the order of the file. `at` is what the clock showed, read as if that were UTC: no zone
    /// is known here, nor a unit (mg/dL stands for it), nor an interval (1 s).
    std::vector<Reading> rows;
    UnitEvidence unit;
    std::uint64_t rows_before = 0;  ///< titles and what stands above them
    std::uint64_t blank_rows = 0;
    std::string first_value;  ///< as written
    std::string first_time;
    std::string point_sample;  ///< a value with a decimal point, if any

    WallTime wall(std::size_t row) const { return WallTime{rows[row].at.time_since_epoch()}; }
};

/// The fast way through delimited text whose every data row is `YYYY-MM-DD HH:MM[:SS]` (or with a
/// T) and a number with at most two decimals behind a point, in columns without quotes. Empty as
/// soon as one row is anything else: then the careful way reads the whole file. A test holds that
/// both agree.
std::optional<PlainRows> plain_rows(std::string_view text, const TableShape& shape, char delimiter);

}  // namespace tracewright
