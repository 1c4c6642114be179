#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace tracewright {

/// How often each day is in each of `draws` resamples of `days` days by circular blocks of `length`
/// neighbours: draws x days counts, row after row; every row adds up to `days`. The same seed gives
/// the same counts on every platform.
/// Method: Politis & Romano 1992 (circular blocks); B and lengths: statistics 5.1.
std::vector<std::uint16_t> block_counts(std::size_t days, std::size_t length, std::size_t draws,
                                        std::uint64_t seed);

/// 2 up to 20 days, 3 from 21 on (statistics 5.1: 2 for 14 days, 3 for 28).
std::size_t block_length_for(std::size_t days);

/// Variance of the mean under resampling, in closed form, so that code is checked without luck.
/// Sources: Kuensch 1989, 10.1214/aos/1176347265 (moving); Politis & Romano 1992 (circular) and
/// 1994, 10.1080/01621459.1994.10476870 (stationary, mean block length `length`).
double moving_block_variance(std::span<const double> series, std::size_t length);
double circular_block_variance(std::span<const double> series, std::size_t length);
double stationary_block_variance(std::span<const double> series, double length);

/// n / (1 + 2 sum (1 - k/n) rho^k): how many independent values a mean of n correlated ones is
/// worth. Method: Bayley & Hammersley 1946.
double effective_sample_size(std::size_t n, double rho);

}  // namespace tracewright
