#pragma once

namespace tracewright {

/// P(T <= t) for Student's t with `dof` > 0 degrees of freedom. Whole dof up to 400 by the finite
/// series of Abramowitz & Stegun 1964, 26.7.3 and 26.7.4; otherwise by the library.
double student_t_cdf(double t, double dof);

/// The t with P(T <= t) = p, 0 < p < 1.
double student_t_quantile(double p, double dof);

}  // namespace tracewright
