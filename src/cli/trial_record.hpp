#pragma once

#include "cli/json_text.hpp"
#include "store/trial_document.hpp"

#include <string>

namespace tracewright {

/// `trial_document` as a value, for a larger document.
Json json_of_trial(const Trial& trial);

/// Its days as an iCalendar file (RFC 5545): one whole-day event each, without any name. Fixed
/// bytes for one trial.
std::string trial_calendar(const Trial& trial);

}  // namespace tracewright
