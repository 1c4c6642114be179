#pragma once

#include "cli/practice_options.hpp"
#include "cli/streams.hpp"

#include <string>

namespace tracewright {

/// What was typed for `writing`; empty: stays as it is.
struct WritingOptions {
    std::string dates;    ///< "day-first", "month-first"
    std::string hours;    ///< "24", "12"
    std::string glucose;  ///< "mg/dL", "mmol/L"
};

/// Sets how the practice writes dates, times and glucose, and shows how it writes now.
Exit writing(const PracticeOptions& practice, const WritingOptions& options,
             const Streams& streams);

}  // namespace tracewright
