#pragma once

#include "inference/ar1_grid.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// What is believed of coefficients and noise before the data: independent normals in units of the
/// noise's deviation, inverse gamma for its square.
struct RegressionPrior {
    std::vector<double> mean;      ///< k
    std::vector<double> variance;  ///< k; of the coefficient over the noise's variance
    double a = 0;                  ///< of the inverse gamma
    double d = 0;
};

struct ConjugateRegression {
    std::vector<double> mean;   ///< k
    std::vector<double> scale;  ///< k; of the marginal Student t's
    double dof = 0;             ///< 2 a_n
    double d = 0;

    TMixture coefficient(std::size_t j) const { return {{{1, mean[j], scale[j]}}, dof}; }
};

/// Linear regression with the normal-inverse-gamma prior; x: n rows of k, row after row; n may
/// be 0.
/// Source: Gelman et al., Bayesian Data Analysis 3rd ed., ch. 14.
ConjugateRegression conjugate_regression(std::span<const double> y, std::span<const double> x,
                                         const RegressionPrior& prior);

/// Two independent normal tellings of one number, joined by their precision.
struct NormalTelling {
    double mean = 0;
    double deviation = 0;  ///< > 0
};
NormalTelling joined(const NormalTelling& a, const NormalTelling& b);
/// More than two combined deviations apart.
bool disagree(const NormalTelling& a, const NormalTelling& b);

}  // namespace tracewright
