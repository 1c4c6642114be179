#pragma once

#include "intake/row_source.hpp"
#include "intake/written_time.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// The plain text of a time cell, a spreadsheet's date number among it.
std::optional<WrittenTime> cell_time(std::string_view plain_text, CellForm form, bool serial_1904);

}  // namespace tracewright
