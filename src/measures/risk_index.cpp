#include "measures/risk_index.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

double symmetrised(double mg_per_dl) {
    const double g = std::clamp(mg_per_dl, 20.0, 600.0);
    return 1.509 * (std::pow(std::log(g), 1.084) - 5.381);
}

Risk risk_of(double mg_per_dl) {
    const double f = symmetrised(mg_per_dl);
    const double r = std::min(100.0, 10 * f * f);
    return f < 0 ? Risk{r, 0} : Risk{0, r};
}

double risk_scale_mg_per_dl(Glucose level) {
    return level.unit == GlucoseUnit::mg_per_dl ? level.value() : level.value() * 18;
}

double symmetrised_mmol_variant(double mmol_per_l) {
    return 1.794 * (std::pow(std::log(mmol_per_l), 1.026) - 1.861);
}

}  // namespace tracewright
