#pragma once

#include "cli/json_text.hpp"
#include "coaching/trial.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// A trial as it is written down before its first day (docs/formats/trial-record.schema.json).
Json json_of_trial(const Trial& trial);

/// Reads such a record. Error: a sentence; also where the order is not the one its seed draws, for
/// then it was changed afterwards.
tl::expected<Trial, std::string> trial_read(std::string_view document);

/// Its days as an iCalendar file (RFC 5545): one whole-day event each, without any name. Fixed
/// bytes for one trial.
std::string trial_calendar(const Trial& trial);

}  // namespace tracewright
