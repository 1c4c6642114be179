#include "inference/shrinkage.hpp"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/tools/minima.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/uniform_01.hpp>

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace tracewright {

namespace {

double normal_cdf(double z) {
    return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

struct Weighing {
    double mean;
    double variance;
    double log_likelihood;  // of the spread, the common mean integrated out
};

Weighing weighed(std::span<const GroupMean> groups, double spread_squared) {
    double sum = 0;
    double weighted = 0;
    double log_terms = 0;
    for (const GroupMean& group : groups) {
        const double variance = group.standard_error * group.standard_error + spread_squared;
        sum += 1 / variance;
        weighted += group.mean / variance;
        log_terms += std::log(variance);
    }
    const double mean = weighted / sum;
    double misfit = 0;
    for (const GroupMean& group : groups) {
        const double off = group.mean - mean;
        misfit += off * off / (group.standard_error * group.standard_error + spread_squared);
    }
    return {mean, 1 / sum, -0.5 * (std::log(sum) + log_terms + misfit)};
}

MomentShrinkage shrunk_at(std::span<const GroupMean> groups, double spread_squared) {
    const Weighing w = weighed(groups, spread_squared);
    MomentShrinkage result{w.mean, std::sqrt(w.variance), spread_squared, 0, {}};
    const double fixed = weighed(groups, 0).mean;
    for (const GroupMean& group : groups) {
        const double own = group.standard_error * group.standard_error;
        result.heterogeneity += (group.mean - fixed) * (group.mean - fixed) / own;
        const double kept = spread_squared / (spread_squared + own);
        result.shrunken.push_back(w.mean + kept * (group.mean - w.mean));
    }
    return result;
}

}  // namespace

namespace {

struct WeightedGroup {
    double weight = 0;        // sum of its values' precisions
    double value = 0;         // its mean
    Eigen::VectorXd columns;  // their means
};

struct Coefficients {
    Eigen::VectorXd mean;
    Eigen::MatrixXd root;   // of their covariance
    double log_likelihood;  // of the spread, the coefficients integrated out
};

// Values parted into what differs within groups, which no spread between them touches, and the
// groups' means.
class Weighted {
  public:
    std::vector<WeightedGroup> groups;

    Weighted(std::span<const GroupValue> values, std::size_t columns)
        : squares_(Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(columns),
                                         static_cast<Eigen::Index>(columns))),
          products_(Eigen::VectorXd::Zero(static_cast<Eigen::Index>(columns))) {
        for (const GroupValue& one : values) {
            if (!(one.standard_error > 0) || one.columns.size() != columns) {
                throw std::invalid_argument("shrinkage needs standard errors above 0");
            }
            if (groups.size() <= one.group) {
                groups.resize(one.group + 1, {0, 0, Eigen::VectorXd::Zero(this->columns())});
            }
            WeightedGroup& group = groups[one.group];
            group.weight += precision(one);
            group.value += precision(one) * one.value;
            group.columns += precision(one) * columns_of(one);
        }
        for (WeightedGroup& group : groups) {
            if (group.weight <= 0) {
                throw std::invalid_argument("a group without a value");
            }
            group.value /= group.weight;
            group.columns /= group.weight;
        }
        for (const GroupValue& one : values) {
            const WeightedGroup& group = groups[one.group];
            const Eigen::VectorXd x = columns_of(one) - group.columns;
            const double y = one.value - group.value;
            squares_ += precision(one) * x * x.transpose();
            products_ += precision(one) * y * x;
            values_squared_ += precision(one) * y * y;
        }
    }

    Eigen::Index columns() const { return products_.size(); }

    Coefficients at_spread(double spread_squared) const {
        Eigen::MatrixXd information = squares_;
        Eigen::VectorXd right = products_;
        double misfit = values_squared_;
        double log_terms = 0;
        for (const WeightedGroup& group : groups) {
            const double weight = group.weight / (1 + spread_squared * group.weight);
            information += weight * group.columns * group.columns.transpose();
            right += weight * group.value * group.columns;
            misfit += weight * group.value * group.value;
            log_terms += std::log1p(spread_squared * group.weight);
        }
        const Eigen::LLT<Eigen::MatrixXd> lower(information);
        if (lower.info() != Eigen::Success) {
            throw std::invalid_argument("columns that depend on each other");
        }
        Coefficients found;
        found.mean = lower.solve(right);
        found.root = lower.matrixU().solve(Eigen::MatrixXd::Identity(columns(), columns()));
        misfit -= right.dot(found.mean);
        log_terms -= 2 * found.root.diagonal().array().log().sum();
        found.log_likelihood = -0.5 * (log_terms + misfit);
        return found;
    }

  private:
    Eigen::MatrixXd squares_;
    Eigen::VectorXd products_;
    double values_squared_ = 0;

    static double precision(const GroupValue& one) {
        return 1 / (one.standard_error * one.standard_error);
    }
    Eigen::Map<const Eigen::VectorXd> columns_of(const GroupValue& one) const {
        return {one.columns.data(), columns()};
    }
};

std::vector<GroupValue> one_of_each(std::span<const GroupMean> groups) {
    std::vector<GroupValue> values;
    for (const GroupMean& group : groups) {
        values.push_back({values.size(), group.mean, group.standard_error, {1}});
    }
    return values;
}

}  // namespace

Shrinkage::Shrinkage(std::span<const GroupMean> groups, double largest_spread, std::size_t points)
    : Shrinkage(one_of_each(groups), std::array{1.0}, largest_spread, points) {}

Shrinkage::Shrinkage(std::span<const GroupValue> values, std::span<const double> at,
                     double largest_spread, std::size_t points) {
    if (values.empty() || at.empty() || points < 2 || !(largest_spread > 0)) {
        throw std::invalid_argument("shrinkage needs values, columns and a spread");
    }
    const Weighted all(values, at.size());
    const Eigen::Map<const Eigen::VectorXd> told_at(at.data(), all.columns());
    own_means_.assign(all.groups.size(), 0);
    std::vector<double> log_weights;
    std::vector<std::vector<double>> own(points);
    for (std::size_t i = 0; i < points; ++i) {
        const double tau =
            largest_spread * static_cast<double>(i) / static_cast<double>(points - 1);
        const Coefficients found = all.at_spread(tau * tau);
        Point point{
            tau, 0, told_at.dot(found.mean), (found.root.transpose() * told_at).squaredNorm(), {},
            {},  {}};
        for (const WeightedGroup& group : all.groups) {
            const double variance = tau * tau / (1 + tau * tau * group.weight);
            const double kept = variance * group.weight;  // of its own mean
            const Eigen::VectorXd leaning = told_at - kept * group.columns;
            point.centre.push_back(kept * group.value + leaning.dot(found.mean));
            point.own_variance.push_back(variance);
            const Eigen::VectorXd deviations = found.root.transpose() * leaning;
            point.leaning.emplace_back(deviations.begin(), deviations.end());
            own[i].push_back(group.value - group.columns.dot(found.mean) + point.mean);
        }
        points_.push_back(std::move(point));
        // The ends of the grid stand for half a step.
        const double half = i == 0 || i + 1 == points ? std::log(0.5) : 0;
        log_weights.push_back(found.log_likelihood + half);
    }
    weigh(log_weights);
    for (std::size_t i = 0; i < points; ++i) {
        for (std::size_t j = 0; j < groups(); ++j) {
            own_means_[j] += points_[i].weight * own[i][j];
        }
    }
}

void Shrinkage::weigh(std::span<const double> log_weights) {
    const double largest = *std::max_element(log_weights.begin(), log_weights.end());
    double sum = 0;
    for (std::size_t i = 0; i < points_.size(); ++i) {
        points_[i].weight = std::exp(log_weights[i] - largest);
        sum += points_[i].weight;
    }
    for (Point& point : points_) {
        point.weight /= sum;
    }
}

double Shrinkage::common_mean() const {
    double sum = 0;
    for (const Point& point : points_) {
        sum += point.weight * point.mean;
    }
    return sum;
}

double Shrinkage::common_deviation() const {
    const double mean = common_mean();
    double sum = 0;
    for (const Point& point : points_) {
        sum += point.weight * (point.variance + (point.mean - mean) * (point.mean - mean));
    }
    return std::sqrt(sum);
}

double Shrinkage::spread_mean() const {
    double sum = 0;
    for (const Point& point : points_) {
        sum += point.weight * point.tau;
    }
    return sum;
}

double Shrinkage::spread_quantile(double p) const {
    // Each point's weight is spread over the step about it.
    const double step = points_[1].tau - points_[0].tau;
    double below = 0;
    for (const Point& point : points_) {
        const double from = std::max(0.0, point.tau - step / 2);
        const double to = std::min(points_.back().tau, point.tau + step / 2);
        if (below + point.weight >= p) {
            return from + (to - from) * (p - below) / point.weight;
        }
        below += point.weight;
    }
    return points_.back().tau;
}

double Shrinkage::variance(const Point& point, std::size_t j) {
    double sum = point.own_variance[j];
    for (const double one : point.leaning[j]) {
        sum += one * one;
    }
    return sum;
}

double Shrinkage::mean(std::size_t j) const {
    double sum = 0;
    for (const Point& point : points_) {
        sum += point.weight * point.centre[j];
    }
    return sum;
}

double Shrinkage::deviation(std::size_t j) const {
    const double centre = mean(j);
    double sum = 0;
    for (const Point& point : points_) {
        const double off = point.centre[j] - centre;
        sum += point.weight * (variance(point, j) + off * off);
    }
    return std::sqrt(sum);
}

double Shrinkage::cdf(std::size_t j, double x) const {
    double sum = 0;
    for (const Point& point : points_) {
        sum += point.weight * normal_cdf((x - point.centre[j]) / std::sqrt(variance(point, j)));
    }
    return sum;
}

double Shrinkage::quantile(std::size_t j, double p) const {
    const double centre = mean(j);
    const double reach = 12 * deviation(j);
    double low = centre - reach;
    double high = centre + reach;
    for (int step = 0; step < 36; ++step) {
        const double middle = (low + high) / 2;
        (cdf(j, middle) < p ? low : high) = middle;
    }
    return (low + high) / 2;
}

std::array<double, 2> Shrinkage::interval(std::size_t j, double level) const {
    return {quantile(j, (1 - level) / 2), quantile(j, (1 + level) / 2)};
}

double Shrinkage::probability_above(std::size_t a, std::size_t b) const {
    double sum = 0;
    for (const Point& point : points_) {
        // Beside their own parts both lean on the same coefficients.
        double variance = point.own_variance[a] + point.own_variance[b];
        for (std::size_t i = 0; i < point.leaning[a].size(); ++i) {
            const double apart = point.leaning[a][i] - point.leaning[b][i];
            variance += apart * apart;
        }
        const double difference = point.centre[a] - point.centre[b];
        const double above = variance > 0     ? normal_cdf(difference / std::sqrt(variance))
                             : difference > 0 ? 1.0
                             : difference < 0 ? 0.0
                                              : 0.5;
        sum += point.weight * above;
    }
    return sum;
}

Shrinkage::Ranks Shrinkage::ranks(double level, int top, std::uint64_t seed, int draws) const {
    const std::size_t k = groups();
    boost::random::mt19937_64 engine(seed);
    boost::random::normal_distribution<double> normal;
    boost::random::uniform_01<double> uniform;
    std::vector<std::vector<int>> counts(k, std::vector<int>(k, 0));
    std::vector<double> theta(k);
    std::vector<double> common(points_.front().leaning.front().size());
    std::vector<std::size_t> order(k);
    for (int draw = 0; draw < draws; ++draw) {
        double u = uniform(engine);
        std::size_t at = 0;
        while (at + 1 < points_.size() && u > points_[at].weight) {
            u -= points_[at].weight;
            ++at;
        }
        const Point& point = points_[at];
        for (double& one : common) {
            one = normal(engine);
        }
        for (std::size_t j = 0; j < k; ++j) {
            const std::vector<double>& leaning = point.leaning[j];
            theta[j] = std::inner_product(leaning.begin(), leaning.end(), common.begin(),
                                          point.centre[j]) +
                       std::sqrt(point.own_variance[j]) * normal(engine);
        }
        std::iota(order.begin(), order.end(), std::size_t{0});
        // Spread 0 makes all equal: then the order is by lot, not by the order of the list.
        const std::size_t turn = engine() % k;
        std::rotate(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(turn), order.end());
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return theta[a] > theta[b]; });
        for (std::size_t rank = 0; rank < k; ++rank) {
            ++counts[order[rank]][rank];
        }
    }
    Ranks result;
    const double tail = (1 - level) / 2 * draws;
    for (const std::vector<int>& count : counts) {
        std::array<int, 2> between{1, static_cast<int>(k)};
        int below = 0;
        int in_top = 0;
        for (std::size_t rank = 0; rank < k; ++rank) {
            if (below <= tail && below + count[rank] > tail) {
                between[0] = static_cast<int>(rank) + 1;
            }
            below += count[rank];
            if (below >= draws - tail && below - count[rank] < draws - tail) {
                between[1] = static_cast<int>(rank) + 1;
            }
            in_top += static_cast<int>(rank) < top ? count[rank] : 0;
        }
        result.interval.push_back(between);
        result.in_top.push_back(static_cast<double>(in_top) / draws);
    }
    return result;
}

MomentShrinkage moment_shrinkage(std::span<const GroupMean> groups) {
    double w = 0;
    double w2 = 0;
    for (const GroupMean& group : groups) {
        const double weight = 1 / (group.standard_error * group.standard_error);
        w += weight;
        w2 += weight * weight;
    }
    const double q = shrunk_at(groups, 0).heterogeneity;
    const double df = static_cast<double>(groups.size()) - 1;
    return shrunk_at(groups, std::max(0.0, (q - df) / (w - w2 / w)));
}

MomentShrinkage restricted_likelihood_shrinkage(std::span<const GroupMean> groups) {
    double mean = 0;
    for (const GroupMean& group : groups) {
        mean += group.mean / static_cast<double>(groups.size());
    }
    double most = 0;
    for (const GroupMean& group : groups) {
        most += (group.mean - mean) * (group.mean - mean) + group.standard_error;
    }
    const auto cost = [&](double tau2) { return -weighed(groups, tau2).log_likelihood; };
    const auto [tau2, value] = boost::math::tools::brent_find_minima(
        cost, 0.0, most, std::numeric_limits<double>::digits / 2);
    return shrunk_at(groups, value < cost(0) ? tau2 : 0);
}

}  // namespace tracewright
