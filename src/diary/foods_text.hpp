#pragma once

#include <string_view>

namespace tracewright {

/// The bytes of data/foods.csv as the program was built with them.
std::string_view foods_csv();

}  // namespace tracewright
