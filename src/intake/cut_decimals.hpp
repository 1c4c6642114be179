#pragma once

#include "intake/table_shape.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace tracewright {

/// Levels whose decimal comma the commas between the fields seem to have cut: every level of the
/// column a small whole number, another one behind it in a field that no title asks for. Empty
/// where the fields aren't cut by commas. Rows with more fields filled than there are columns are
/// refused one by one; this is for those that that can't tell. `titles`: how many there are.
std::optional<CutDecimals> cut_decimals(const std::vector<SampleRow>& sample, std::size_t data,
                                        std::size_t titles, const TableShape& shape,
                                        const SourceFacts& facts);

}  // namespace tracewright
