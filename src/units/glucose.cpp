#include "units/glucose.hpp"

#include <cmath>

namespace tracewright {

namespace {

// 13.35 is stored as 13.3499..; a nudge of 1e-9 decides ties on the decimal number that was meant.
double half_away(double value, double scale) {
    const double scaled = std::abs(value) * scale;
    return std::copysign(std::floor(scaled + 0.5 + 1e-9) / scale, value);
}

}  // namespace

double converted(double value, GlucoseUnit from, GlucoseUnit to) {
    if (from == to) {
        return value;
    }
    return to == GlucoseUnit::mg_per_dl ? value * mg_per_dl_in_mmol_per_l
                                        : value / mg_per_dl_in_mmol_per_l;
}

const char* name_of(GlucoseUnit unit) {
    return unit == GlucoseUnit::mg_per_dl ? "mg/dL" : "mmol/L";
}

std::int32_t rounded_hundredths(double value) {
    return static_cast<std::int32_t>(std::lround(half_away(value, 100.0) * 100.0));
}

double rounded_for_display(double value, GlucoseUnit unit) {
    return half_away(value, unit == GlucoseUnit::mg_per_dl ? 1.0 : 10.0);
}

}  // namespace tracewright
