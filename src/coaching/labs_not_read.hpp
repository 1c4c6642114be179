#pragma once

#include "coaching/client_facts.hpp"

#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Results kept that are none of what is read: A1c, fasting glucose, weight, each with its day and
/// a unit and value that can be; as they were written, in the order told.
std::vector<LabResult> labs_not_read(std::span<const LabResult> labs);

/// "cholesterol 5.1 mmol/L".
std::string lab_words(const LabResult& lab);

}  // namespace tracewright
