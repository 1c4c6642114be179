#pragma once

#include <array>
#include <span>

namespace tracewright {

/// A line through points by the median of all slopes between two of them.
struct MedianLine {
    double slope = 0;
    double intercept = 0;             ///< median of y less slope times median of x
    std::array<double, 2> slope95{};  ///< by Kendall's variance, normal approximation
};

/// For wears, blocks and days, never for readings: points are taken for independent. x distinct, at
/// least two points; std::invalid_argument otherwise.
/// Source: Sen 1968, JASA 63:1379, 10.1080/01621459.1968.10480934.
MedianLine theil_sen(std::span<const double> x, std::span<const double> y);

}  // namespace tracewright
