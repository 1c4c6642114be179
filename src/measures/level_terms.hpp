#pragma once

#include "measures/risk_index.hpp"
#include "trace/reading.hpp"

namespace tracewright {

/// What the indices make of one level: computed once per level, not once per reading.
struct LevelTerms {
    Risk risk;
    double m_value = 0;
    double grade = 0;
};

/// Whole mg/dL and tenths of mmol/L come from a table built at first use; anything else is
/// computed.
LevelTerms level_terms(Glucose level);

}  // namespace tracewright
