#pragma once

#include "coaching/trial.hpp"

#include <string>

namespace tracewright {

/// A trial's days as an iCalendar file (RFC 5545): one whole-day event each, without any name.
/// Fixed bytes for one trial.
std::string trial_calendar(const Trial& trial);

}  // namespace tracewright
