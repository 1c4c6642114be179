#pragma once

#include "intake/cell_content.hpp"
#include "intake/table_shape.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// Numbers beside a diary may be part of it: of the columns that may be glucose only those that say
/// so, by a title of its unit alone, else by LOW or HIGH among them or a title of values that stand
/// apart from the diary's words. `data`: the sample's rows of data; `contents` by column.
std::vector<std::size_t> glucose_beside_diary(const TableShape& shape,
                                              std::span<const ColumnContent> contents,
                                              std::span<const SampleRow> data);

}  // namespace tracewright
