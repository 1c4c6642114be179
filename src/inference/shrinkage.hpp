#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace tracewright {

/// A mean of a group with its standard error (> 0).
struct GroupMean {
    double mean;
    double standard_error;
};

/// One value of a group, with its standard error (> 0) and what is held equal beside it.
struct GroupValue {
    std::size_t group;
    double value;
    double standard_error;
    std::vector<double> columns;
};

/// What several groups of one kind say of each other: normal means theta_j about a common mean with
/// spread tau, flat prior of the mean, uniform prior of tau on a grid, everything integrated
/// exactly but for the grid.
class Shrinkage {
  public:
    /// tau on `points` steps from 0 to `largest_spread` (> 0). std::invalid_argument for no groups,
    /// a standard error that is not above 0, or fewer than two points.
    /// Source: Gelman et al., Bayesian Data Analysis 3rd ed., 5.4; Rubin 1981,
    /// 10.3102/10769986006004377.
    Shrinkage(std::span<const GroupMean> groups, double largest_spread, std::size_t points = 400);

    /// The same of single values: columns x coefficients (flat priors) + theta of its group +
    /// error. The columns, an intercept or dummies that sum to one among them, are as many in each
    /// and independent; each group from 0 to the largest has a value. Groups are told at the
    /// columns `at`. Groups that the columns tell apart completely lean on the columns alone.
    Shrinkage(std::span<const GroupValue> values, std::span<const double> at, double largest_spread,
              std::size_t points = 400);

    std::size_t groups() const { return own_means_.size(); }
    double common_mean() const;
    double common_deviation() const;
    double spread_mean() const;
    double spread_quantile(double p) const;

    /// Its own mean at the columns `at`, not shrunken.
    double own_mean(std::size_t j) const { return own_means_[j]; }
    double mean(std::size_t j) const;
    double deviation(std::size_t j) const;
    double quantile(std::size_t j, double p) const;
    std::array<double, 2> interval(std::size_t j, double level) const;
    /// P(theta_a > theta_b).
    double probability_above(std::size_t a, std::size_t b) const;

    /// For each group the ranks (1: largest) that hold `level` of the posterior between equal
    /// tails, and P(among the `top` largest), from seeded draws of all thetas jointly.
    struct Ranks {
        std::vector<std::array<int, 2>> interval;
        std::vector<double> in_top;
    };
    Ranks ranks(double level, int top, std::uint64_t seed, int draws = 4000) const;

  private:
    struct Point {
        double tau;
        double weight;
        double mean;      // of the common mean, given tau
        double variance;  // likewise
        // Of each group given tau: its centre, the variance that is its own, and how it leans on
        // the coefficients, in independent deviations of theirs.
        std::vector<double> centre;
        std::vector<double> own_variance;
        std::vector<std::vector<double>> leaning;
    };
    void weigh(std::span<const double> log_weights);
    static double variance(const Point& point, std::size_t j);
    double cdf(std::size_t j, double x) const;

    std::vector<double> own_means_;
    std::vector<Point> points_;
};

/// The same with one spread found by the method of moments, for checks. Source: DerSimonian & Laird
/// 1986, 10.1016/0197-2456(86)90046-2.
struct MomentShrinkage {
    double common_mean = 0;
    double standard_error = 0;
    double spread_squared = 0;
    double heterogeneity = 0;  ///< Cochran's Q
    std::vector<double> shrunken;
};
MomentShrinkage moment_shrinkage(std::span<const GroupMean> groups);

/// The spread by restricted maximum likelihood instead.
MomentShrinkage restricted_likelihood_shrinkage(std::span<const GroupMean> groups);

}  // namespace tracewright
