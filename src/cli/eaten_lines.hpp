#pragma once

#include "diary/eaten_text.hpp"

#include <ostream>
#include <string>

namespace tracewright {

/// A diary text worked out, for people: a line for each food, what is not sure of it below, the
/// sums at the end. Every line begins with `indent`.
void print_eaten(const EatenText& eaten, const std::string& indent, std::ostream& out);

}  // namespace tracewright
