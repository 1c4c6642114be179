#pragma once

#include "units/glucose.hpp"

#include <string>

namespace tracewright {

/// A number with a point and so many decimals at most; nothing is kept behind the last digit that
/// matters: 7.5, 7, 0.25.
std::string number_words(double value, int most_decimals);

/// mg/dL whole or mmol/L with one decimal, from a level in mg/dL.
std::string pricked_words(double mg_per_dl, GlucoseUnit unit);

/// A whole number with leading zeros.
std::string padded(long long value, int digits);

/// The first point of a text as a comma.
std::string with_comma(std::string text);

}  // namespace tracewright
