#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// R^2 of the least-squares fit of `y` on an intercept and those columns of `x` (n rows of k) whose
/// bit is set in `chosen`. 0 where y does not vary.
double explained_share(std::span<const double> y, std::span<const double> x, std::size_t k,
                       unsigned chosen);

/// How the explained variance is shared out among the columns. Descriptive.
struct VarianceShares {
    double all = 0;              ///< R^2 of all together
    double shared = 0;           ///< `all` less what is unique to each
    std::vector<double> unique;  ///< what is lost by leaving a column out
    std::vector<double> even;    ///< average gain over all orderings: splits `shared` evenly
};

/// 1 <= k <= 12. `even` after Lindeman, Merenda & Gold 1980; Groemping 2006, 10.18637/jss.v017.i01:
/// it splits what is shared by rule, whatever the truth, so it is no share of causes.
VarianceShares variance_shares(std::span<const double> y, std::span<const double> x, std::size_t k);

}  // namespace tracewright
