#pragma once

#include <string_view>

namespace tracewright {

/// The month, 1 to 12, that a word in lower case begins to name in English, German, French or
/// Spanish; 0 if it names none.
int month_of(std::string_view word);

/// Whether a word in lower case begins like a day of the week in one of these languages.
bool is_weekday(std::string_view word);

}  // namespace tracewright
