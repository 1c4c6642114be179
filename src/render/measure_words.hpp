#pragma once

#include "measures/measure.hpp"
#include "units/glucose.hpp"

#include <string>

namespace tracewright {

/// A measure as a table prints it.
struct MeasureRow {
    std::string name;  ///< "Average", "Coefficient of variation (CV)"
    std::string value;
    std::string interval;  ///< "136 to 149", or why not
    std::string days;
    std::string remark;  ///< share censored, bounds, a caution
};

MeasureRow measure_row(const Measure& measure);

}  // namespace tracewright
