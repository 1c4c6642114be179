#pragma once

#include "intake/sample_row.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// A sample in which the texts of a column of day numbers ("46083.34375", as spreadsheets count
/// dates) have become dates, as they are in a workbook.
struct SerialColumns {
    std::vector<SampleRow> sample;
    std::string first;  ///< as written
};

/// Columns whose every number lies in 20,000 to 80,000, two of them at least with decimals behind
/// a point or a comma. Empty if there is none.
std::optional<SerialColumns> serial_columns(const std::vector<SampleRow>& sample);

}  // namespace tracewright
