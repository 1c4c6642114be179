#include "inference/round_the_clock.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

constexpr int knots = 24;
constexpr double lowess_hours = 2.0;

double tricube(double u) {
    const double a = 1 - std::abs(u) * u * u;
    return std::abs(u) >= 1 ? 0 : a * a * a;
}

double bisquare(double u) {
    const double a = 1 - u * u;
    return std::abs(u) >= 1 ? 0 : a * a;
}

// Cleveland's local fit at x[i] over the window [left, right].
double local_fit(std::span<const double> x, std::span<const double> y,
                 std::span<const double> robust, std::size_t i, std::size_t left,
                 std::size_t right) {
    const double reach = std::max(x[i] - x[left], x[right] - x[i]);
    const auto weight = [&](std::size_t j) {
        const double distance = std::abs(x[j] - x[i]);
        if (distance > 0.999 * reach) {
            return 0.0;
        }
        return robust[j] * (distance > 0.001 * reach ? tricube(distance / reach) : 1.0);
    };
    // Ties at the window's edge count, as in the published routine.
    std::size_t last = right;
    while (last + 1 < x.size() && x[last + 1] - x[i] <= reach) {
        ++last;
    }
    double sum = 0;
    double centre = 0;
    for (std::size_t j = left; j <= last; ++j) {
        sum += weight(j);
        centre += weight(j) * x[j];
    }
    if (sum <= 0) {
        return y[i];
    }
    centre /= sum;
    double spread = 0;
    for (std::size_t j = left; j <= last; ++j) {
        spread += weight(j) / sum * (x[j] - centre) * (x[j] - centre);
    }
    const double range = x.back() - x.front();
    const double slope_scale = std::sqrt(spread) > 0.001 * range ? (x[i] - centre) / spread : 0.0;
    double fitted = 0;
    for (std::size_t j = left; j <= last; ++j) {
        fitted += weight(j) / sum * (1 + slope_scale * (x[j] - centre)) * y[j];
    }
    return fitted;
}

std::vector<double> robustness(std::span<const double> y, std::span<const double> fitted) {
    std::vector<double> residuals;
    for (std::size_t i = 0; i < y.size(); ++i) {
        residuals.push_back(std::abs(y[i] - fitted[i]));
    }
    std::vector<double> sorted = residuals;
    std::sort(sorted.begin(), sorted.end());
    const std::size_t half = sorted.size() / 2;
    const double six_mad = 3 * (sorted[half] + sorted[sorted.size() - 1 - half]);
    std::vector<double> weights;
    for (const double r : residuals) {
        weights.push_back(r <= 0.001 * six_mad  ? 1
                          : r > 0.999 * six_mad ? 0
                                                : bisquare(r / six_mad));
    }
    return weights;
}

// Values of the four cubic B-splines that are not zero at `phase` (0 to 1) between two knots.
std::array<double, 4> cubic_pieces(double phase) {
    const double u = phase;
    const double v = 1 - u;
    return {v * v * v / 6, (3 * u * u * u - 6 * u * u + 4) / 6, (3 * v * v * v - 6 * v * v + 4) / 6,
            u * u * u / 6};
}

Eigen::MatrixXd cyclic_basis(std::size_t bins) {
    Eigen::MatrixXd basis = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(bins), knots);
    for (std::size_t i = 0; i < bins; ++i) {
        const double at = (static_cast<double>(i) + 0.5) * knots / static_cast<double>(bins);
        const auto pieces = cubic_pieces(at - std::floor(at));
        for (int j = 0; j < 4; ++j) {
            basis(static_cast<Eigen::Index>(i), (static_cast<int>(at) + j) % knots) +=
                pieces[static_cast<std::size_t>(j)];
        }
    }
    return basis;
}

Eigen::MatrixXd cyclic_penalty() {
    Eigen::MatrixXd differences = Eigen::MatrixXd::Zero(knots, knots);
    for (int i = 0; i < knots; ++i) {
        differences(i, i) += 1;
        differences(i, (i + 1) % knots) -= 2;
        differences(i, (i + 2) % knots) += 1;
    }
    return differences.transpose() * differences;
}

// Restricted likelihood of a penalty, up to a constant. The penalty's null space is the constant.
double restricted_likelihood(const Eigen::LDLT<Eigen::MatrixXd>& penalised, double lambda,
                             double rss, double roughness, double n) {
    const double log_determinant = penalised.vectorD().array().max(1e-300).log().sum();
    return -0.5 * ((n - 1) * std::log(rss + lambda * roughness) + log_determinant -
                   (knots - 1) * std::log(lambda));
}

void spline_all(std::span<std::vector<std::optional<double>>> curves,
                std::span<const double> weights) {
    const std::size_t bins = weights.size();
    const auto rows = static_cast<Eigen::Index>(bins);
    const Eigen::MatrixXd basis = cyclic_basis(bins);
    const Eigen::MatrixXd penalty = cyclic_penalty();
    const Eigen::Map<const Eigen::VectorXd> w(weights.data(), rows);
    const Eigen::MatrixXd weighted = basis.transpose() * (w / w.mean()).asDiagonal();
    const Eigen::MatrixXd cross = weighted * basis;
    Eigen::MatrixXd values(rows, static_cast<Eigen::Index>(curves.size()));
    for (std::size_t c = 0; c < curves.size(); ++c) {
        for (std::size_t i = 0; i < bins; ++i) {
            values(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(c)) = *curves[c][i];
        }
    }
    std::vector<double> best(curves.size(), -INFINITY);
    Eigen::MatrixXd smooth(rows, values.cols());
    for (double power = -3; power <= 3.01; power += 0.5) {
        const double lambda = std::pow(10.0, power);
        const Eigen::LDLT<Eigen::MatrixXd> penalised(cross + lambda * penalty);
        const Eigen::MatrixXd coefficients = penalised.solve(weighted * values);
        const Eigen::MatrixXd fitted = basis * coefficients;
        for (Eigen::Index c = 0; c < values.cols(); ++c) {
            const Eigen::VectorXd miss = values.col(c) - fitted.col(c);
            const double rss = (w.array() / w.mean() * miss.array().square()).sum();
            const double roughness = coefficients.col(c).dot(penalty * coefficients.col(c));
            const double likelihood = restricted_likelihood(penalised, lambda, rss + 1e-12,
                                                            roughness, static_cast<double>(bins));
            if (likelihood > best[static_cast<std::size_t>(c)]) {
                best[static_cast<std::size_t>(c)] = likelihood;
                smooth.col(c) = fitted.col(c);
            }
        }
    }
    for (std::size_t c = 0; c < curves.size(); ++c) {
        for (std::size_t i = 0; i < bins; ++i) {
            curves[c][i] = smooth(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(c));
        }
    }
}

void lowess_stretch(std::vector<std::optional<double>>& curve, std::size_t begin, std::size_t end,
                    double bins_of_two_hours) {
    std::vector<double> x;
    std::vector<double> y;
    for (std::size_t i = begin; i < end; ++i) {
        x.push_back(static_cast<double>(i));
        y.push_back(*curve[i]);
    }
    if (x.size() < 4) {
        return;  // too short to smooth
    }
    const double span = std::min(1.0, bins_of_two_hours / static_cast<double>(x.size()));
    const std::vector<double> smooth = lowess(x, y, span);
    for (std::size_t i = begin; i < end; ++i) {
        curve[i] = smooth[i - begin];
    }
}

}  // namespace

std::vector<double> lowess(std::span<const double> x, std::span<const double> y, double span,
                           int robust_passes) {
    const std::size_t n = x.size();
    const auto nearest = static_cast<std::size_t>(
        std::clamp(span * static_cast<double>(n) + 1e-7, 2.0, static_cast<double>(n)));
    std::vector<double> robust(n, 1.0);
    std::vector<double> fitted(n, 0.0);
    for (int pass = 0; pass <= robust_passes; ++pass) {
        std::size_t left = 0;
        for (std::size_t i = 0; i < n; ++i) {
            while (left + nearest < n && x[left + nearest] - x[i] < x[i] - x[left]) {
                ++left;
            }
            fitted[i] = local_fit(x, y, robust, i, left, left + nearest - 1);
        }
        if (pass < robust_passes) {
            robust = robustness(y, fitted);
        }
    }
    return fitted;
}

ClockSmoothing smooth_round_the_clock(std::span<std::vector<std::optional<double>>> curves,
                                      std::span<const double> weights) {
    const auto& first = curves.front();
    if (std::all_of(first.begin(), first.end(), [](const auto& v) { return v.has_value(); })) {
        spline_all(curves, weights);
        return ClockSmoothing::periodic_spline;
    }
    const double bins_of_two_hours = lowess_hours / 24 * static_cast<double>(weights.size());
    // From an empty bin on, so that a stretch over midnight stays one stretch.
    const auto empty = std::find(first.begin(), first.end(), std::nullopt) - first.begin();
    for (auto& curve : curves) {
        std::rotate(curve.begin(), curve.begin() + empty, curve.end());
        for (std::size_t begin = 0; begin < curve.size();) {
            std::size_t end = begin;
            while (end < curve.size() && curve[end]) {
                ++end;
            }
            if (end > begin) {
                lowess_stretch(curve, begin, end, bins_of_two_hours);
            }
            begin = end + 1;
        }
        std::rotate(curve.begin(), curve.end() - empty, curve.end());
    }
    return ClockSmoothing::lowess_in_stretches;
}

}  // namespace tracewright
