#pragma once

#include <string_view>

namespace tracewright {

/// Whether a text begins with a word for what sums a table up ("Total", "Average of all",
/// "Mittelwert:") and holds no digit, in the languages whose titles are read: a row that begins so
/// is a footer.
bool sums_up(std::string_view plain_text);

}  // namespace tracewright
