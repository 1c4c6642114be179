#include "measures/glucose_indicator.hpp"

namespace tracewright {

A1cPercent glucose_management_indicator(double mean_mg_per_dl) {
    return {3.31 + 0.02392 * mean_mg_per_dl};
}

A1cMmolPerMol glucose_management_indicator_ifcc(double mean_mmol_per_l) {
    return {12.71 + 4.70587 * mean_mmol_per_l};
}

double estimated_average_mg_per_dl(A1cPercent a1c) {
    return 28.7 * a1c.percent - 46.7;
}

double estimated_average_printed_mmol_per_l(A1cPercent a1c) {
    return estimated_average_mg_per_dl(a1c) / 18;
}

A1cPercent a1c_from_average(double mean_mg_per_dl) {
    return {(mean_mg_per_dl + 46.7) / 28.7};
}

}  // namespace tracewright
