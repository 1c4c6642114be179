#include "inference/conjugate_regression.hpp"

#include <Eigen/Dense>

#include <cmath>

namespace tracewright {

ConjugateRegression conjugate_regression(std::span<const double> y, std::span<const double> x,
                                         const RegressionPrior& prior) {
    const auto k = static_cast<Eigen::Index>(prior.mean.size());
    const auto n = static_cast<Eigen::Index>(y.size());
    using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
    const Eigen::MatrixXd design = Eigen::Map<const RowMajor>(x.data(), n, k);
    const Eigen::VectorXd target = Eigen::Map<const Eigen::VectorXd>(y.data(), n);
    const Eigen::VectorXd b0 = Eigen::Map<const Eigen::VectorXd>(prior.mean.data(), k);
    const Eigen::VectorXd precision =
        Eigen::Map<const Eigen::VectorXd>(prior.variance.data(), k).cwiseInverse();
    Eigen::MatrixXd inverse = design.transpose() * design;
    inverse.diagonal() += precision;
    const Eigen::MatrixXd v = inverse.inverse();
    const Eigen::VectorXd b = v * (precision.cwiseProduct(b0) + design.transpose() * target);
    const double a_n = prior.a + static_cast<double>(n) / 2;
    const double d_n = prior.d + 0.5 * (target.squaredNorm() + b0.dot(precision.cwiseProduct(b0)) -
                                        b.dot(inverse * b));
    ConjugateRegression result{{b.begin(), b.end()}, {}, 2 * a_n, d_n};
    for (Eigen::Index j = 0; j < k; ++j) {
        result.scale.push_back(std::sqrt(v(j, j) * d_n / a_n));
    }
    return result;
}

NormalTelling joined(const NormalTelling& a, const NormalTelling& b) {
    const double wa = 1 / (a.deviation * a.deviation);
    const double wb = 1 / (b.deviation * b.deviation);
    return {(wa * a.mean + wb * b.mean) / (wa + wb), 1 / std::sqrt(wa + wb)};
}

bool disagree(const NormalTelling& a, const NormalTelling& b) {
    return std::abs(a.mean - b.mean) > 2 * std::hypot(a.deviation, b.deviation);
}

}  // namespace tracewright
