#pragma once

namespace tracewright {

/// The shape of a rise: (t / peak) exp(1 - t / peak) for t > 0 minutes after the meal, else 0; 1 at
/// `peak_minutes` (> 0). The gamma density of shape 2, scaled.
double meal_kernel(double minutes, double peak_minutes);

/// Its area from 0 to `minutes`; all of it is e x peak.
double meal_kernel_area(double minutes, double peak_minutes);

}  // namespace tracewright
