#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// Rows and cells of a table that the program carries within itself: commas, LF or CRLF, cells with
/// commas or line ends between quotes, a quote within them doubled. Every text gives at least one
/// row of one cell. Not for files from outside: those have every row accounted for by the intake.
std::vector<std::vector<std::string>> table_cells(std::string_view csv);

}  // namespace tracewright
