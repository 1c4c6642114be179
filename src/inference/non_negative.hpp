#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// x >= 0 that makes |A x - b| least, told by the normal equations: `gram` = A'A (k x k, row after
/// row, positive semidefinite), `moment` = A'b (k). Active sets; at most 30 k rounds, then the best
/// so far.
/// Source: Lawson & Hanson 1974, Solving Least Squares Problems, ch. 23.
std::vector<double> non_negative_solution(std::span<const double> gram,
                                          std::span<const double> moment);

/// The same of the rows themselves: n rows of k, b of n values.
std::vector<double> non_negative_least_squares(std::span<const double> a, std::size_t k,
                                               std::span<const double> b);

}  // namespace tracewright
