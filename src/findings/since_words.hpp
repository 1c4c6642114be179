#pragma once

#include <chrono>

namespace tracewright {

/// What stands behind the age of the last reading, the same wherever it is told: "What came after
/// it is not known." below 24 hours, else "Nothing can be said since then." (safety rule 6).
constexpr const char* since_words(std::chrono::seconds age) {
    return age < std::chrono::hours{24} ? "What came after it is not known."
                                        : "Nothing can be said since then.";
}

}  // namespace tracewright
