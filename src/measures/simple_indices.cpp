#include "measures/simple_indices.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

double j_index_mg_per_dl(double mean, double sd) {
    return 0.001 * (mean + sd) * (mean + sd);
}

double j_index_mmol_per_l(double mean, double sd) {
    return 0.324 * (mean + sd) * (mean + sd);
}

double m_value_term(double mg_per_dl, double reference_mg_per_dl) {
    const double deviation = std::abs(10 * std::log10(mg_per_dl / reference_mg_per_dl));
    return deviation * deviation * deviation;
}

double grade_score(double mmol_per_l) {
    constexpr double most = 50;
    if (mmol_per_l <= 1) {
        return most;
    }
    const double root = std::log10(std::log10(mmol_per_l)) + 0.16;
    return std::min(most, 425 * root * root);
}

}  // namespace tracewright
