#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

namespace tracewright {

/// second = intercept + slope x first, where both are measured with error.
struct LineOfTwoMethods {
    double slope = 1;
    double intercept = 0;
    std::optional<std::array<double, 2>> slope95;
};

/// Deming's line; `variance_ratio`: error variance of the second over that of the first. The
/// slope's interval by leaving out one pair at a time (jackknife, t with n - 2). Empty below 3
/// pairs or where the values don't hang together at all. Source: Deming 1943 (from memory); at
/// ratio 1 Pearson 1901, 10.1080/14786440109462720.
std::optional<LineOfTwoMethods> deming_line(std::span<const double> first,
                                            std::span<const double> second,
                                            double variance_ratio = 1);

/// Passing & Bablok's line: the shifted median of all slopes between pairs. Slopes of exactly -1
/// and pairs of equal points are left out, the shift is the number of slopes below -1; upright
/// slopes count as infinite, up or down. Empty below 3 pairs or without a slope. Source: Passing &
/// Bablok 1983, 10.1515/cclm.1983.21.11.709.
struct PassingBablok {
    LineOfTwoMethods line;
    std::size_t slopes = 0;
    std::size_t offset = 0;
};
std::optional<PassingBablok> passing_bablok_line(std::span<const double> first,
                                                 std::span<const double> second);

}  // namespace tracewright
