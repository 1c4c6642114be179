#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// Pearson's correlation. 0 where either does not vary or there are fewer than two values.
double correlation(std::span<const double> a, std::span<const double> b);

/// How far the columns of a regression (n rows of k, row after row, without the intercept) can be
/// told apart.
struct Collinearity {
    std::vector<double> vif;  ///< variance inflation per column; infinite where others give it
    std::vector<double> condition_indices;  ///< ascending from 1, intercept included
};

/// Variance inflation: 1 / (1 - R^2 of a column on the others). Condition indices: the largest over
/// each singular value of the columns with intercept, each scaled to unit length. n > k >= 1.
/// Source: Belsley, Kuh & Welsch 1980 (from memory).
Collinearity collinearity(std::span<const double> x, std::size_t k);

}  // namespace tracewright
