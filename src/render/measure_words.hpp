#pragma once

#include "measures/goals.hpp"
#include "measures/measure.hpp"
#include "units/glucose.hpp"

#include <string>
#include <utility>
#include <vector>

namespace tracewright {

/// A measure as a table prints it.
struct MeasureRow {
    std::string name;      ///< "Average", "Coefficient of variation (CV)"
    std::string value;     ///< "142 mg/dL"; what it may be, "2.0 to 2.6", where it is left open
    std::string interval;  ///< "136 to 149 mg/dL", or why not
    std::string days;
    std::string remark;  ///< a caution
};

/// Edges in the name stand in the unit that the page shows, the other in brackets: "Low: 54 to 69
/// mg/dL (3.0 to 3.8)", "Low: 3.0 to 3.8 mmol/L (54 to 69)".
MeasureRow measure_row(const Measure& measure, GlucoseUnit shown);

/// The measures that a page shows, a row each under `measure_columns`. In pregnancy, while planning
/// one or when unsure none by the ranges of other people (safety rule 11); otherwise all but the
/// share in the range of pregnancy.
inline const std::vector<std::string> measure_columns{"measure", "value", "95 % interval", "days",
                                                      "remark"};
std::vector<std::vector<std::string>> measure_rows(const Measures& measures, const Goals& goals,
                                                   GlucoseUnit shown);

/// How much of the time lay beyond the sensor's limit and what the table does about it; empty if
/// none did. Said once, not in every row.
std::string beyond_limit_sentence(const Measures& measures);

/// The bands and the average of each part of the day, the week, or wear, a row each; a cell holds
/// the value and, on a line of its own, its interval. In pregnancy the bands are those that a page
/// shows then.
struct PartsTable {
    std::vector<std::string> columns;
    std::vector<double> shares;  ///< of the width
    std::vector<std::vector<std::string>> rows;
};
PartsTable parts_table(const std::vector<std::pair<std::string, Measures>>& parts,
                       const Goals& goals, GlucoseUnit unit);

}  // namespace tracewright
