#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace tracewright {

/// A value and the time it stands for (any unit; > 0).
struct Weighted {
    double value;
    double weight;
};

/// The quantiles at each p of `probabilities` (0 to 1, ascending). `values` is put in order of
/// value. p_k = [(k-1) w_k + (n-1) sum of the weights before] / [(n-1) sum of weights],
/// interpolated; equals Hyndman & Fan 1996 type 7 with equal weights, and is monotone in p. One
/// value gives itself; none gives an empty result. Method: statistics 11 (ours for unequal
/// weights).
std::vector<double> weighted_quantiles(std::vector<Weighted>& values,
                                       std::span<const double> probabilities);

/// The quantile at a half; with equal weights found without sorting. `values` is reordered, not
/// empty.
double weighted_median(std::vector<Weighted>& values);

/// The unweighted sample quantile by a named definition of Hyndman & Fan 1996,
/// 10.1080/00031305.1996.10473566. `sorted` ascending, not empty. The project's own is type 7; 6
/// and 8 stay as named variants.
enum class QuantileType : std::uint8_t { type6 = 6, type7 = 7, type8 = 8 };
double quantile(std::span<const double> sorted, double p, QuantileType type = QuantileType::type7);

}  // namespace tracewright
