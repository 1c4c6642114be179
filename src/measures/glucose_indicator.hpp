#pragma once

#include "units/a1c.hpp"

namespace tracewright {

/// Glucose management indicator: percent = 3.31 + 0.02392 x mean (mg/dL).
/// Source: Bergenstal et al. 2018, Diabetes Care 41:2275, 10.2337/dc18-1581. Fitted above about 90
/// mg/dL; a label for an average, never a laboratory A1c.
A1cPercent glucose_management_indicator(double mean_mg_per_dl);

/// The same paper's own form on the other scale: 12.71 + 4.70587 x mean (mmol/L). The two differ by
/// 0.01 mmol/mol; one report uses one of them.
A1cMmolPerMol glucose_management_indicator_ifcc(double mean_mmol_per_l);

/// Estimated average glucose: mg/dL = 28.7 x A1c - 46.7, unrounded.
/// Source: Nathan et al. 2008, Diabetes Care 31:1473, 10.2337/dc08-0545.
double estimated_average_mg_per_dl(A1cPercent a1c);

/// The mmol/L column as that paper prints it: the mg/dL regression divided by 18, not by 18.016.
double estimated_average_printed_mmol_per_l(A1cPercent a1c);

/// That line the other way round: (mean + 46.7) / 28.7.
A1cPercent a1c_from_average(double mean_mg_per_dl);

}  // namespace tracewright
