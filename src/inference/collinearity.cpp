#include "inference/collinearity.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace tracewright {

namespace {

double mean_of(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

// The columns, centred and of unit length; a column that does not vary stays zero.
Eigen::MatrixXd standardised(std::span<const double> x, std::size_t k) {
    const auto rows = static_cast<Eigen::Index>(x.size() / k);
    Eigen::MatrixXd z(rows, static_cast<Eigen::Index>(k));
    for (Eigen::Index i = 0; i < z.rows(); ++i) {
        for (Eigen::Index j = 0; j < z.cols(); ++j) {
            z(i, j) = x[static_cast<std::size_t>(i) * k + static_cast<std::size_t>(j)];
        }
    }
    z.rowwise() -= z.colwise().mean();
    for (Eigen::Index j = 0; j < z.cols(); ++j) {
        const double length = z.col(j).norm();
        if (length > 0) {
            z.col(j) /= length;
        }
    }
    return z;
}

std::vector<double> condition_indices_of(std::span<const double> x, std::size_t k) {
    const auto rows = static_cast<Eigen::Index>(x.size() / k);
    Eigen::MatrixXd a(rows, static_cast<Eigen::Index>(k) + 1);
    for (Eigen::Index i = 0; i < rows; ++i) {
        a(i, 0) = 1;
        for (Eigen::Index j = 1; j < a.cols(); ++j) {
            a(i, j) = x[static_cast<std::size_t>(i) * k + static_cast<std::size_t>(j - 1)];
        }
    }
    for (Eigen::Index j = 0; j < a.cols(); ++j) {
        const double length = a.col(j).norm();
        if (length > 0) {
            a.col(j) /= length;
        }
    }
    const Eigen::VectorXd singular = Eigen::JacobiSVD<Eigen::MatrixXd>(a).singularValues();
    std::vector<double> indices;
    for (const double value : singular) {
        indices.push_back(value > 0 ? singular(0) / value
                                    : std::numeric_limits<double>::infinity());
    }
    return indices;
}

}  // namespace

double correlation(std::span<const double> a, std::span<const double> b) {
    if (a.size() < 2 || a.size() != b.size()) {
        return 0;
    }
    const double mean_a = mean_of(a);
    const double mean_b = mean_of(b);
    double ab = 0;
    double aa = 0;
    double bb = 0;
    for (std::size_t i = 0; i < a.size(); ++i) {
        ab += (a[i] - mean_a) * (b[i] - mean_b);
        aa += (a[i] - mean_a) * (a[i] - mean_a);
        bb += (b[i] - mean_b) * (b[i] - mean_b);
    }
    return aa > 0 && bb > 0 ? ab / std::sqrt(aa * bb) : 0;
}

Collinearity collinearity(std::span<const double> x, std::size_t k) {
    Collinearity result;
    const Eigen::MatrixXd z = standardised(x, k);
    for (Eigen::Index j = 0; j < z.cols(); ++j) {
        Eigen::MatrixXd others(z.rows(), z.cols() - 1);
        for (Eigen::Index from = 0, to = 0; from < z.cols(); ++from) {
            if (from != j) {
                others.col(to++) = z.col(from);
            }
        }
        const Eigen::VectorXd fitted =
            others.cols() > 0
                ? Eigen::VectorXd(others * others.colPivHouseholderQr().solve(z.col(j)))
                : Eigen::VectorXd::Zero(z.rows());
        const double left = (z.col(j) - fitted).squaredNorm();
        result.vif.push_back(left > 1e-12 ? 1 / left : std::numeric_limits<double>::infinity());
    }
    result.condition_indices = condition_indices_of(x, k);
    return result;
}

}  // namespace tracewright
