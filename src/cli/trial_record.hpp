#pragma once

#include "cli/json_text.hpp"
#include "coaching/trial.hpp"
#include "store/trial_document.hpp"

namespace tracewright {

/// `trial_document` as a value, for a larger document.
Json json_of_trial(const Trial& trial);

}  // namespace tracewright
