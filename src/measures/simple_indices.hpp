#pragma once

namespace tracewright {

/// J-index: 0.001 (mean + SD)^2 in mg/dL. Source: Wojcicki 1995, Horm Metab Res 27:41 (from
/// memory); the form 0.324 (mean + SD)^2 in mmol/L: Hill et al. 2011, 10.1089/dia.2010.0247,
/// Table 1.
double j_index_mg_per_dl(double mean, double sd);
double j_index_mmol_per_l(double mean, double sd);

/// One level's term of the M-value: |10 log10(g / reference)|^3. Source: Schlichtkrull et al. 1965,
/// Acta Med Scand 177:95 (from memory). The reference of 120 mg/dL is the original's and always
/// shown.
inline constexpr double m_value_reference_mg_per_dl = 120;
double m_value_term(double mg_per_dl, double reference_mg_per_dl = m_value_reference_mg_per_dl);

/// One level's GRADE score: 425 {log10[log10 G] + 0.16}^2, G in mmol/L; at most 50 (from memory),
/// and 50 where the formula has no value (G <= 1). The summary is the median. Source: Hill et al.
/// 2011, 10.1089/dia.2010.0247, Table 1.
double grade_score(double mmol_per_l);

}  // namespace tracewright
