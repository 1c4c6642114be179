#pragma once

#include <string_view>

namespace tracewright {

/// Whether a spreadsheet would work a cell out as a formula: it begins with = + - @, a tab or a
/// carriage return (common practice, no source). So does one that was marked against it.
bool begins_a_formula(std::string_view text);

/// A cell without the apostrophe that marks such a text as text; any other as it is.
std::string_view without_formula_mark(std::string_view text);

}  // namespace tracewright
