#pragma once

#include "units/glucose.hpp"

#include <string>

namespace tracewright {

/// A consensus or ladder edge in the unit shown: edge_words(54, mmol/L) is "3.0 mmol/L". The pairs
/// are rounded, not converted: 54/3.0, 63/3.5, 70/3.9, 140/7.8, 180/10.0, 240/13.3,
/// 250/13.9, 300/16.7.
/// std::out_of_range for any other number (a programmer's mistake).
/// Source: Battelino et al. 2019, 10.2337/dci19-0028; 240/13.3 and 300/16.7 from memory.
std::string edge_words(int mg_per_dl, GlucoseUnit unit);

}  // namespace tracewright
