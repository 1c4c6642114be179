#pragma once

#include "intake/column_guesses.hpp"
#include "intake/table_shape.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// What a plain file holds: one time and one number a row, nothing odd.
struct PlainRows {
    std::vector<WallTime> walls;
    std::vector<std::int32_t> hundredths;
    UnitEvidence unit;
    std::uint64_t rows_before = 0;  ///< titles and what stands above them
    std::uint64_t blank_rows = 0;
    std::string first_value;  ///< as written
    std::string first_time;
    std::string point_sample;  ///< a value with a decimal point, if any
};

/// The fast way through delimited text whose every data row is `YYYY-MM-DD HH:MM[:SS]` (or with a
/// T) and a number with at most two decimals behind a point, in columns without quotes. Empty as
/// soon as one row is anything else: then the careful way reads the whole file. A test holds that
/// both agree.
std::optional<PlainRows> plain_rows(std::string_view text, const TableShape& shape, char delimiter);

}  // namespace tracewright
