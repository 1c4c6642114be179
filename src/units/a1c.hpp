#pragma once

namespace tracewright {

/// Glycated haemoglobin on the scale printed in percent (NGSP).
struct A1cPercent {
    double percent = 0;
};

/// Glycated haemoglobin on the scale in mmol/mol (IFCC).
struct A1cMmolPerMol {
    double mmol_per_mol = 0;
};

/// percent = 0.09148 x + 2.152 and its algebraic inverse, unrounded.
/// Not invertible after rounding: compare with limits in the scale the laboratory reported.
/// Source: NGSP; Hoelzel et al. 2004, Clin Chem 50:166.
A1cPercent to_percent(A1cMmolPerMol a1c);
A1cMmolPerMol to_mmol_per_mol(A1cPercent a1c);

}  // namespace tracewright
