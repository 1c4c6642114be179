#include "units/a1c.hpp"

namespace tracewright {

namespace {
constexpr double slope = 0.09148;
constexpr double intercept = 2.152;
}  // namespace

A1cPercent to_percent(A1cMmolPerMol a1c) {
    return {slope * a1c.mmol_per_mol + intercept};
}

A1cMmolPerMol to_mmol_per_mol(A1cPercent a1c) {
    return {(a1c.percent - intercept) / slope};
}

}  // namespace tracewright
