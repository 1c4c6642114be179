#include "inference/ar1_grid.hpp"

#include "inference/student_t.hpp"

#include <Eigen/Dense>

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace tracewright {

namespace {

// Parts that together weigh less than a rounding error are dropped: they cost time and say nothing.
constexpr double negligible_weight = 1e-13;

std::vector<double> grid_of(const Ar1Prior& prior) {
    std::vector<double> grid;
    const int count = static_cast<int>(std::lround((prior.to - prior.from) / prior.step));
    for (int i = 0; i <= count; ++i) {
        grid.push_back(prior.from + i * prior.step);
    }
    return grid;
}

double log_prior(double rho, const Ar1Prior& prior) {
    const double z = (rho - prior.mean) / prior.sd;
    return -0.5 * z * z;
}

// What whitening multiplies a row by, and takes of the row before.
struct Whitening {
    double own;
    double previous;
};

Whitening whitening_of(double rho, const SeriesStep& step) {
    if (step.segment_start) {
        return {std::sqrt(1 - rho * rho), 0};
    }
    if (step.gap == 1) {
        return {1, rho};
    }
    const double power = std::pow(rho, step.gap);
    const double c = std::sqrt((1 - power * power) / (1 - rho * rho));
    return {1 / c, power / c};
}

// Half the log determinant of the errors' precision, up to a constant.
double log_jacobian(double rho, std::span<const SeriesStep> steps) {
    double sum = 0;
    for (const SeriesStep& step : steps) {
        if (step.segment_start) {
            sum += 0.5 * std::log(1 - rho * rho);
        } else if (step.gap != 1) {
            sum += std::log(whitening_of(rho, step).own);
        }
    }
    return sum;
}

struct Solved {
    Eigen::VectorXd b;
    Eigen::MatrixXd inverse;  // (X'X)^-1 of the whitened rows
    double rss;
    double log_determinant;  // of X'X
};

Solved solve_at(double rho, std::span<const double> y, std::span<const double> x, std::size_t k,
                std::span<const SeriesStep> steps) {
    const auto rows = static_cast<Eigen::Index>(y.size());
    const auto columns = static_cast<Eigen::Index>(k);
    Eigen::MatrixXd design(rows, columns);
    Eigen::VectorXd target(rows);
    for (Eigen::Index t = 0; t < rows; ++t) {
        const auto i = static_cast<std::size_t>(t);
        const Whitening w = whitening_of(rho, steps[i]);
        target(t) = w.own * y[i] - (w.previous != 0 ? w.previous * y[i - 1] : 0);
        for (Eigen::Index j = 0; j < columns; ++j) {
            const std::size_t at = i * k + static_cast<std::size_t>(j);
            design(t, j) = w.own * x[at] - (w.previous != 0 ? w.previous * x[at - k] : 0);
        }
    }
    const Eigen::HouseholderQR<Eigen::MatrixXd> qr(design);
    const Eigen::MatrixXd r = qr.matrixQR().topRows(columns).triangularView<Eigen::Upper>();
    const double largest = r.diagonal().cwiseAbs().maxCoeff();
    if (!(r.diagonal().cwiseAbs().minCoeff() > 1e-12 * largest)) {
        throw std::invalid_argument("columns of the regression depend on one another");
    }
    Solved solved;
    solved.b = qr.solve(target);
    const Eigen::MatrixXd inverse_r =
        r.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(columns, columns));
    solved.inverse = inverse_r * inverse_r.transpose();
    solved.rss = (target - design * solved.b).squaredNorm();
    solved.log_determinant = 2 * r.diagonal().cwiseAbs().array().log().sum();
    return solved;
}

// What sums of these values round by, as an SD; not 0, whatever they are.
double rounding_of(std::span<const double> y) {
    constexpr double digits = 1e-9;
    double largest = 0;
    for (const double value : y) {
        largest = std::max(largest, std::abs(value));
    }
    return std::max(digits * largest, 1e-100);
}

// exp(log weights), scaled to add up to one.
std::vector<double> normalised(std::vector<double> log_weights) {
    const double largest = *std::max_element(log_weights.begin(), log_weights.end());
    double sum = 0;
    for (double& w : log_weights) {
        w = std::exp(w - largest);
        sum += w;
    }
    for (double& w : log_weights) {
        w /= sum;
    }
    return log_weights;
}

void check(std::span<const double> y, std::span<const double> x, std::size_t k,
           std::span<const SeriesStep> steps) {
    if (k == 0 || y.size() <= k || x.size() != y.size() * k || steps.size() != y.size() ||
        !steps.front().segment_start) {
        throw std::invalid_argument(
            "a grid regression needs more rows than columns, a step per row");
    }
}

}  // namespace

TMixture::TMixture(std::vector<Part> parts, double dof) : parts_(std::move(parts)), dof_(dof) {
    std::erase_if(parts_, [](const Part& part) { return part.weight < negligible_weight; });
}

double TMixture::mean() const {
    double sum = 0;
    double weight = 0;
    for (const Part& part : parts_) {
        sum += part.weight * part.centre;
        weight += part.weight;
    }
    return sum / weight;
}

double TMixture::cdf(double x) const {
    double sum = 0;
    double weight = 0;
    for (const Part& part : parts_) {
        const double p = part.scale > 0    ? student_t_cdf((x - part.centre) / part.scale, dof_)
                         : x < part.centre ? 0.0
                                           : 1.0;
        sum += part.weight * p;
        weight += part.weight;
    }
    return sum / weight;
}

double TMixture::quantile(double p) const {
    const double t = student_t_quantile(p, dof_);
    double low = parts_.front().centre + t * parts_.front().scale;
    double high = low;
    for (const Part& part : parts_) {
        low = std::min(low, part.centre + t * part.scale);
        high = std::max(high, part.centre + t * part.scale);
    }
    if (!(high > low)) {
        return low;
    }
    const auto miss = [&](double x) { return cdf(x) - p; };
    const double at_low = miss(low);
    const double at_high = miss(high);
    if (at_low >= 0) {
        return low;
    }
    if (at_high <= 0) {
        return high;
    }
    std::uintmax_t iterations = 100;
    const auto [a, b] = boost::math::tools::toms748_solve(
        miss, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(40),
        iterations);
    return (a + b) / 2;
}

std::array<double, 2> TMixture::interval(double level) const {
    return {quantile((1 - level) / 2), quantile((1 + level) / 2)};
}

TMixture TMixture::widened(double sd) const {
    std::vector<Part> parts = parts_;
    for (Part& part : parts) {
        part.scale = std::hypot(part.scale, sd);
    }
    return {std::move(parts), dof_};
}

Ar1Grid::Ar1Grid(std::span<const double> y, std::span<const double> x, std::size_t k,
                 std::span<const SeriesStep> steps, double least_sd, const Ar1Prior& prior)
    : k_(k), dof_(static_cast<double>(y.size()) - static_cast<double>(k)) {
    check(y, x, k, steps);
    const double least = std::max(least_sd, rounding_of(y));
    std::vector<double> log_weights;
    for (const double rho : grid_of(prior)) {
        const Solved solved = solve_at(rho, y, x, k, steps);
        const double variance = std::max(solved.rss / dof_, least * least);
        log_weights.push_back(-dof_ / 2 * std::log(variance) - 0.5 * solved.log_determinant +
                              log_jacobian(rho, steps) + log_prior(rho, prior));
        Point point{rho, 0, {solved.b.begin(), solved.b.end()}, {}};
        const Eigen::MatrixXd covariance = solved.inverse * variance;
        point.covariance.assign(covariance.data(), covariance.data() + covariance.size());
        points_.push_back(std::move(point));
    }
    const std::vector<double> weights = normalised(std::move(log_weights));
    for (std::size_t i = 0; i < points_.size(); ++i) {
        points_[i].weight = weights[i];
    }
}

double Ar1Grid::mean_correlation() const {
    return std::accumulate(points_.begin(), points_.end(), 0.0, [](double sum, const Point& point) {
        return sum + point.weight * point.rho;
    });
}

double Ar1Grid::median_correlation() const {
    double below = 0;
    for (const Point& point : points_) {
        below += point.weight;
        if (below >= 0.5) {
            return point.rho;
        }
    }
    return points_.back().rho;
}

TMixture Ar1Grid::coefficient(std::size_t j) const {
    std::vector<double> weights(k_, 0.0);
    weights.at(j) = 1;
    return contrast(weights);
}

TMixture Ar1Grid::contrast(std::span<const double> weights) const {
    std::vector<TMixture::Part> parts;
    for (const Point& point : points_) {
        double centre = 0;
        double variance = 0;
        for (std::size_t i = 0; i < k_; ++i) {
            centre += weights[i] * point.b[i];
            for (std::size_t j = 0; j < k_; ++j) {
                variance += weights[i] * weights[j] * point.covariance[i * k_ + j];
            }
        }
        parts.push_back({point.weight, centre, std::sqrt(variance)});
    }
    return {std::move(parts), dof_};
}

Ar1Grid::Fit Ar1Grid::fit_at(double rho, std::span<const double> y, std::span<const double> x,
                             std::size_t k, std::span<const SeriesStep> steps) {
    check(y, x, k, steps);
    const Solved solved = solve_at(rho, y, x, k, steps);
    const double variance = solved.rss / (static_cast<double>(y.size()) - static_cast<double>(k));
    Fit fit{{solved.b.begin(), solved.b.end()}, {}, 0};
    for (Eigen::Index j = 0; j < solved.inverse.rows(); ++j) {
        fit.standard_error.push_back(std::sqrt(solved.inverse(j, j) * variance));
    }
    // The errors' own spread, not that of their innovations.
    fit.sigma = std::sqrt(variance / (1 - rho * rho));
    return fit;
}

TMixture ar1_mean(std::span<const double> y, std::span<const SeriesStep> steps,
                  const Ar1Prior& prior) {
    if (y.size() < 2 || steps.size() != y.size()) {
        throw std::invalid_argument("a mean with an interval needs two values and a step for each");
    }
    const double dof = static_cast<double>(y.size()) - 1;
    // Centred, so that the sums of squares below lose no digits to a large level.
    const double level = std::accumulate(y.begin(), y.end(), 0.0) / static_cast<double>(y.size());
    std::vector<double> log_weights;
    std::vector<TMixture::Part> parts;
    for (const double rho : grid_of(prior)) {
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (std::size_t i = 0; i < y.size(); ++i) {
            const Whitening w = whitening_of(rho, steps[i]);
            const double previous = w.previous != 0 ? y[i - 1] - level : 0;
            const double value = w.own * (y[i] - level) - w.previous * previous;
            const double one = w.own - w.previous;
            xx += one * one;
            xy += one * value;
            yy += value * value;
        }
        const double centre = xy / xx;
        const double rss = std::max(0.0, yy - centre * xy);
        log_weights.push_back(-dof / 2 * std::log(std::max(rss, 1e-300)) - 0.5 * std::log(xx) +
                              log_jacobian(rho, steps) + log_prior(rho, prior));
        parts.push_back({0, level + centre, std::sqrt(rss / dof / xx)});
    }
    const std::vector<double> weights = normalised(std::move(log_weights));
    for (std::size_t i = 0; i < parts.size(); ++i) {
        parts[i].weight = weights[i];
    }
    return {std::move(parts), dof};
}

}  // namespace tracewright
