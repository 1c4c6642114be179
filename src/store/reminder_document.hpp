#pragma once

#include "coaching/reminders.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// A practice's reminder rules as one line of JSON (docs/formats/reminders.schema.json, `rules`).
std::string reminder_document(const ReminderRules& rules);

/// Error: a sentence. What is not told stays as in a new practice.
tl::expected<ReminderRules, std::string> reminder_rules_read(std::string_view document);

}  // namespace tracewright
