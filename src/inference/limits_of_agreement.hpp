#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>

namespace tracewright {

/// How far two ways of measuring the same thing read apart (second less first).
struct LimitsOfAgreement {
    std::size_t pairs = 0;
    double mean_difference = 0;
    double sd = 0;                   ///< of a single difference
    std::array<double, 2> limits{};  ///< mean -+ 1.96 sd: where 95 % of pairs lie
    double standard_error = 0;       ///< of the mean difference
    double standard_error_of_limits = 0;
    std::array<double, 2> mean95{};                   ///< t with pairs - 1, or clusters - 1
    std::array<std::array<double, 2>, 2> limits95{};  ///< of the lower and of the upper limit
};

/// Pairs each on its own. Empty below 2 pairs. Sources: Bland & Altman 1986, Lancet 327:307,
/// 10.1016/S0140-6736(86)90837-8; standard error of a limit sd sqrt(1/n + 1.96^2 / (2 (n - 1))),
/// Bland & Altman 1999 (from memory).
std::optional<LimitsOfAgreement> limits_of_agreement(std::span<const double> first,
                                                     std::span<const double> second);

/// Pairs that hang together in clusters (`cluster`: a number for each pair), such as those of one
/// sensor or day: the spread within and between clusters added up, by one-way analysis of variance
/// for unequal numbers. Empty below 2 clusters or without a cluster of two. Source: Bland & Altman
/// 2007, J Biopharm Stat 17:571, the true value varying within a cluster. The limits' intervals
/// count clusters, not pairs: ours, on the wide side.
std::optional<LimitsOfAgreement> limits_of_agreement_clustered(std::span<const double> first,
                                                               std::span<const double> second,
                                                               std::span<const int> cluster);

}  // namespace tracewright
