#pragma once

#include "coaching/trial.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace tracewright {

/// A trial as it is written down before its first day (docs/formats/trial-record.schema.json).
/// Fixed bytes for one trial; `indent` -1: one line.
std::string trial_document(const Trial& trial, int indent = 2);

/// Error: a sentence; also where the order is not the one its seed draws, for then it was changed
/// afterwards.
tl::expected<Trial, std::string> trial_read(std::string_view document);

}  // namespace tracewright
