#include "inference/variance_shares.hpp"

#include <Eigen/Dense>

#include <bit>

namespace tracewright {

namespace {

std::vector<double> factorials(std::size_t up_to) {
    std::vector<double> f(up_to + 1, 1.0);
    for (std::size_t i = 1; i <= up_to; ++i) {
        f[i] = f[i - 1] * static_cast<double>(i);
    }
    return f;
}

}  // namespace

double explained_share(std::span<const double> y, std::span<const double> x, std::size_t k,
                       unsigned chosen) {
    const auto rows = static_cast<Eigen::Index>(y.size());
    Eigen::VectorXd target(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
        target(i) = y[static_cast<std::size_t>(i)];
    }
    target.array() -= target.mean();
    const double total = target.squaredNorm();
    const int columns = std::popcount(chosen);
    if (!(total > 0) || columns == 0) {
        return 0;
    }
    Eigen::MatrixXd design(rows, columns);
    Eigen::Index to = 0;
    for (std::size_t j = 0; j < k; ++j) {
        if ((chosen >> j & 1U) != 0) {
            for (Eigen::Index i = 0; i < rows; ++i) {
                design(i, to) = x[static_cast<std::size_t>(i) * k + j];
            }
            design.col(to).array() -= design.col(to).mean();
            ++to;
        }
    }
    const Eigen::VectorXd fitted = design * design.colPivHouseholderQr().solve(target);
    return 1 - (target - fitted).squaredNorm() / total;
}

VarianceShares variance_shares(std::span<const double> y, std::span<const double> x,
                               std::size_t k) {
    const unsigned sets = 1U << k;
    std::vector<double> share(sets);
    for (unsigned set = 0; set < sets; ++set) {
        share[set] = explained_share(y, x, k, set);
    }
    const std::vector<double> f = factorials(k);
    VarianceShares result;
    result.all = share.back();
    result.shared = result.all;
    for (std::size_t j = 0; j < k; ++j) {
        const unsigned own = 1U << j;
        double even = 0;
        for (unsigned set = 0; set < sets; ++set) {
            if ((set & own) == 0) {
                const auto before = static_cast<std::size_t>(std::popcount(set));
                even += f[before] * f[k - before - 1] / f[k] * (share[set | own] - share[set]);
            }
        }
        result.even.push_back(even);
        result.unique.push_back(result.all - share[(sets - 1) & ~own]);
        result.shared -= result.unique.back();
    }
    return result;
}

}  // namespace tracewright
