#include "inference/student_t.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <cmath>
#include <numbers>

namespace tracewright {

namespace {

constexpr double largest_series_dof = 400;

// P(-|t| < T < |t|). The mixtures of the grid regression ask for thousands of these.
double central_probability(double t, int dof) {
    const double theta = std::atan(std::abs(t) / std::sqrt(dof));
    const double cosine = std::cos(theta);
    const double square = cosine * cosine;
    const bool odd = dof % 2 == 1;
    double term = odd ? cosine : 1.0;
    double sum = dof == 1 ? 0.0 : term;
    for (int i = odd ? 3 : 2; i < dof; i += 2) {
        term *= square * (i - 1.0) / i;
        sum += term;
    }
    return odd ? 2 / std::numbers::pi * (theta + std::sin(theta) * sum) : std::sin(theta) * sum;
}

}  // namespace

double student_t_cdf(double t, double dof) {
    if (dof <= largest_series_dof && dof == std::floor(dof)) {
        return 0.5 + std::copysign(0.5 * central_probability(t, static_cast<int>(dof)), t);
    }
    return boost::math::cdf(boost::math::students_t(dof), t);
}

double student_t_quantile(double p, double dof) {
    return boost::math::quantile(boost::math::students_t(dof), p);
}

}  // namespace tracewright
