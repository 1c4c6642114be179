#include "inference/non_negative.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <limits>

namespace tracewright {

namespace {

using Index = Eigen::Index;

// The solution on the free unknowns alone, zero elsewhere.
Eigen::VectorXd solved_on(const Eigen::MatrixXd& gram, const Eigen::VectorXd& moment,
                          const std::vector<Index>& free) {
    const auto count = static_cast<Index>(free.size());
    Eigen::MatrixXd part(count, count);
    Eigen::VectorXd right(count);
    for (Index i = 0; i < count; ++i) {
        right(i) = moment(free[static_cast<std::size_t>(i)]);
        for (Index j = 0; j < count; ++j) {
            part(i, j) = gram(free[static_cast<std::size_t>(i)], free[static_cast<std::size_t>(j)]);
        }
    }
    const Eigen::VectorXd found = part.ldlt().solve(right);
    Eigen::VectorXd all = Eigen::VectorXd::Zero(moment.size());
    for (Index i = 0; i < count; ++i) {
        all(free[static_cast<std::size_t>(i)]) = found(i);
    }
    return all;
}

// Moves x towards `wanted` until the first free unknown would leave zero, and frees it no longer.
void step_back(Eigen::VectorXd& x, const Eigen::VectorXd& wanted, std::vector<Index>& free) {
    double step = 1;
    for (const Index i : free) {
        if (wanted(i) <= 0) {
            step = std::min(step, x(i) / (x(i) - wanted(i)));
        }
    }
    x += step * (wanted - x);
    std::erase_if(free, [&](Index i) {
        const bool held = wanted(i) <= 0 && x(i) <= 1e-14 * (1 + std::abs(wanted(i)));
        if (held) {
            x(i) = 0;
        }
        return held;
    });
}

}  // namespace

std::vector<double> non_negative_solution(std::span<const double> gram,
                                          std::span<const double> moment) {
    const auto k = static_cast<Index>(moment.size());
    using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
    const Eigen::MatrixXd g = Eigen::Map<const RowMajor>(gram.data(), k, k);
    const Eigen::VectorXd m = Eigen::Map<const Eigen::VectorXd>(moment.data(), k);
    const double tolerance = 1e-12 * (m.size() > 0 ? m.cwiseAbs().maxCoeff() + 1e-300 : 1);
    Eigen::VectorXd x = Eigen::VectorXd::Zero(k);
    std::vector<Index> free;
    for (Index round = 0; round < 30 * k; ++round) {
        const Eigen::VectorXd pull = m - g * x;
        Index best = -1;
        double strongest = tolerance;
        for (Index i = 0; i < k; ++i) {
            const bool held = std::find(free.begin(), free.end(), i) == free.end();
            if (held && pull(i) > strongest) {
                strongest = pull(i);
                best = i;
            }
        }
        if (best < 0) {
            break;
        }
        free.push_back(best);
        Eigen::VectorXd wanted = solved_on(g, m, free);
        while (std::any_of(free.begin(), free.end(), [&](Index i) { return wanted(i) <= 0; })) {
            const std::size_t before = free.size();
            step_back(x, wanted, free);
            if (free.size() == before) {
                break;  // rounding alone: nothing moves any more
            }
            wanted = solved_on(g, m, free);
        }
        x = wanted.cwiseMax(0);
    }
    return {x.begin(), x.end()};
}

std::vector<double> non_negative_least_squares(std::span<const double> a, std::size_t k,
                                               std::span<const double> b) {
    std::vector<double> gram(k * k, 0.0);
    std::vector<double> moment(k, 0.0);
    for (std::size_t row = 0; row < b.size(); ++row) {
        for (std::size_t i = 0; i < k; ++i) {
            const double value = a[row * k + i];
            moment[i] += value * b[row];
            for (std::size_t j = 0; j < k; ++j) {
                gram[i * k + j] += value * a[row * k + j];
            }
        }
    }
    return non_negative_solution(gram, moment);
}

}  // namespace tracewright
