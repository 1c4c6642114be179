#pragma once

#include "intake/cell_content.hpp"
#include "intake/table_shape.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// Of the columns that no title made anything else, those whose contents say most for glucose: a
/// unit in the title, then LOW or HIGH among the levels, then a title of values, then numbers, last
/// numbers that count rows. Several where they say as much. Ours, no source.
std::vector<std::size_t> likeliest_glucose(std::span<const ColumnGuess> columns,
                                           std::span<const ColumnContent> contents);

}  // namespace tracewright
