#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>

namespace tracewright {

/// The randomisation test of paired differences: under a fair coin in each pair every pattern of
/// signs was as likely.
struct SignFlip {
    double mean = 0;
    double p = 1;                ///< two-sided
    std::uint64_t at_least = 0;  ///< patterns with |sum| at least the observed
    std::uint64_t patterns = 0;  ///< all patterns gone through, or draws + 1
    std::uint64_t upper = 0;     ///< patterns with a sum at least the observed (enumerated only)
    bool enumerated = true;
};

/// All 2^n patterns up to n = 20, then 99,999 seeded draws with (1 + count) / (1 + draws). Sums
/// that differ by rounding alone count as equal. No differences: p 1.
/// Source: Fisher 1935, The Design of Experiments, sec. 21.
SignFlip sign_flip(std::span<const double> differences, std::uint64_t seed = 1);

/// The values d for which the test of (differences - d) gives p > 1 - level: the interval by
/// inversion. Empty where no p could go that low (fewer than 6 pairs at 0.95).
std::optional<std::array<double, 2>> sign_flip_interval(std::span<const double> differences,
                                                        double level = 0.95,
                                                        std::uint64_t seed = 1);

/// 2 / 2^pairs: the smallest two-sided p that so many pairs can give.
double smallest_sign_flip_p(int pairs);

}  // namespace tracewright
