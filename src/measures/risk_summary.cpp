#include "measures/risk_summary.hpp"

#include <algorithm>
#include <cmath>

namespace tracewright {

GlycaemiaRiskIndex glycaemia_risk_index(double very_low, double low, double high,
                                        double very_high) {
    GlycaemiaRiskIndex result;
    result.low_part = very_low + 0.8 * low;
    result.high_part = very_high + 0.5 * high;
    result.index = std::min(100.0, 3.0 * result.low_part + 1.6 * result.high_part);
    return result;
}

char glycaemia_risk_zone(double index) {
    const double whole = std::floor(index + 0.5);
    return whole <= 20 ? 'A' : whole <= 40 ? 'B' : whole <= 60 ? 'C' : whole <= 80 ? 'D' : 'E';
}

}  // namespace tracewright
