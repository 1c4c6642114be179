#pragma once

#include "measures/disputed_lows.hpp"

#include <string>

namespace tracewright {

/// "12 times several levels for one moment, all below 54 mg/dL: which are right is not known".
std::string disputed_low_words(const DisputedLow& low, GlucoseUnit unit);

}  // namespace tracewright
