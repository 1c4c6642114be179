#include "inference/grubbs.hpp"

#include "inference/student_t.hpp"

#include <cmath>

namespace tracewright {

double grubbs_limit(double n) {
    const double t = student_t_quantile(1 - 0.05 / (2 * n), n - 2);
    return (n - 1) / std::sqrt(n) * std::sqrt(t * t / (n - 2 + t * t));
}

}  // namespace tracewright
