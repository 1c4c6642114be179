#pragma once

#include "intake/sample_row.hpp"

#include <cstddef>
#include <span>

namespace tracewright {

// How the cells of one column are spelled, in the rows of data of a sample.

/// Nine in ten of those filled are offsets from UTC with a sign and a colon, or behind UTC or GMT:
/// whatever the title, nothing else is written so.
bool offsets_stand_in(std::span<const SampleRow> data, std::size_t column);

/// Nine in ten of those filled are times of day in the forms that a title of times allows ("0815"):
/// numbers that count something pass sixty.
bool are_clocks_by_title(std::span<const SampleRow> data, std::size_t column);

/// Any has more than digits: digits alone may be a serial number as well.
bool are_more_than_digits(std::span<const SampleRow> data, std::size_t column);

}  // namespace tracewright
