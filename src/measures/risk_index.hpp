#pragma once

#include "units/glucose.hpp"

namespace tracewright {

/// The symmetrised glucose scale: 1.509 [(ln g)^1.084 - 5.381], g in mg/dL, held to 20..600.
/// Source: Kovatchev et al. 1997, Diabetes Care 20:1655, 10.2337/diacare.20.11.1655; the constants
/// follow from its symmetry conditions (a test solves them again).
double symmetrised(double mg_per_dl);

/// Risk of one level, 0 to 100, split into its low and high side: one of them is 0.
struct Risk {
    double low = 0;
    double high = 0;
};
Risk risk_of(double mg_per_dl);

/// A level as the risk scale takes it: mmol/L times 18 for this one formula (ours).
double risk_scale_mg_per_dl(Glucose level);

/// The scale in mmol/L with the constants 1.794, 1.026 and 1.861 (from memory): a named variant for
/// checks, 0.6 % off at low glucose; the project's measures use the form above.
double symmetrised_mmol_variant(double mmol_per_l);

}  // namespace tracewright
