#pragma once

#include <string_view>

namespace tracewright {

/// Which end of a night a title names by its words in lower case, parted by single blanks:
/// "bedtime", "sleep start" and "schlafbeginn" its start, "woke up" and "sleep end" its end. Of
/// "sleep time" or "sleep" none: it may as well be how long.
enum class EndOfSleep { none, start, end };
EndOfSleep end_of_sleep(std::string_view words);

/// Whether a title says that its rows are nights: "night_of", "Nacht".
bool names_a_night(std::string_view title);

/// Whether a text says that the client slept and nothing else: "sleep", "Nap".
bool says_sleep(std::string_view text);

}  // namespace tracewright
