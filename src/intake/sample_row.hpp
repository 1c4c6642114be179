#pragma once

#include "intake/row_source.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace tracewright {

/// A row of the beginning of a file, copied.
struct SampleRow {
    std::uint32_t line = 0;
    std::vector<std::string> cells;  ///< plain text
    std::vector<CellForm> forms;
    RowFault fault = RowFault::none;
};

/// Rows at the beginning of a source (at most `most`), which is left at its beginning.
std::vector<SampleRow> sample_of(RowSource& source, std::size_t most = 150);

}  // namespace tracewright
