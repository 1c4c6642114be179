#include "responses/meal_kernel.hpp"

#include <cmath>
#include <numbers>

namespace tracewright {

double meal_kernel(double minutes, double peak_minutes) {
    if (!(minutes > 0)) {
        return 0;
    }
    const double t = minutes / peak_minutes;
    return t * std::exp(1 - t);
}

double meal_kernel_area(double minutes, double peak_minutes) {
    if (!(minutes > 0)) {
        return 0;
    }
    const double t = minutes / peak_minutes;
    return std::numbers::e * peak_minutes * (1 - (1 + t) * std::exp(-t));
}

}  // namespace tracewright
