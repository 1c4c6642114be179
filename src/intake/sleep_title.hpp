#pragma once

#include <string_view>

namespace tracewright {

/// Whether a title says that what stands below is of sleep: "Bedtime", "Woke up", "Schlafbeginn".
bool names_sleep(std::string_view title);

/// Whether a text says that the client slept and nothing else: "sleep", "Nap".
bool says_sleep(std::string_view text);

}  // namespace tracewright
