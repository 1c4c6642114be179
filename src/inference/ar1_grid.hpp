#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace tracewright {

/// Where a row of a series stands to the row before it.
struct SeriesStep {
    bool segment_start =
        false;    ///< first row, or first after a wear boundary: the recursion restarts
    int gap = 1;  ///< nights (days) since the row before, within a segment
};

/// Prior of the correlation between neighbours; ours, printed with results.
struct Ar1Prior {
    double mean = 0.2;
    double sd = 0.25;
    double from = -0.50;
    double to = 0.90;
    double step = 0.05;
};

/// A probability distribution: weighted Student t's about shifted centres.
class TMixture {
  public:
    struct Part {
        double weight;
        double centre;
        double scale;
    };
    TMixture(std::vector<Part> parts, double dof);

    double mean() const;
    double cdf(double x) const;
    double probability_above(double x) const { return 1 - cdf(x); }
    /// 0 < p < 1; by bracketing root search. Equal parts of no width give their centre.
    double quantile(double p) const;
    std::array<double, 2> interval(double level = 0.95) const;
    /// With the square of `sd` added to each part's: an error of another source, the same whatever
    /// the parts.
    TMixture widened(double sd) const;

  private:
    std::vector<Part> parts_;
    double dof_;
};

/// Linear regression with AR(1) errors whose correlation is integrated out on a grid.
/// Method: statistics 2.2 (docs/methods/ar1-grid.md): flat coefficients and 1/sigma^2, the prior
/// above on the correlation. Exact, deterministic, no sampling.
class Ar1Grid {
  public:
    /// y: n values; x: n rows of k columns, row after row; steps: one per row, the first a segment
    /// start. `least_sd`: no row is measured better, so the errors' SD counts as no less; what the
    /// fit leaves of noise below what sums of y round by counts as that, and gives no division by
    /// nothing. std::invalid_argument unless n > k >= 1 and the columns are independent.
    Ar1Grid(std::span<const double> y, std::span<const double> x, std::size_t k,
            std::span<const SeriesStep> steps, double least_sd = 0, const Ar1Prior& prior = {});

    std::size_t coefficients() const { return k_; }
    double dof() const { return dof_; }
    double mean_correlation() const;
    double median_correlation() const;

    TMixture coefficient(std::size_t j) const;
    /// Of the weighted sum of coefficients.
    TMixture contrast(std::span<const double> weights) const;

    /// The fit at one fixed correlation, for checks: estimate and standard error per coefficient.
    struct Fit {
        std::vector<double> b;
        std::vector<double> standard_error;
        double sigma = 0;
    };
    static Fit fit_at(double rho, std::span<const double> y, std::span<const double> x,
                      std::size_t k, std::span<const SeriesStep> steps);

  private:
    struct Point {
        double rho;
        double weight;
        std::vector<double> b;           // k
        std::vector<double> covariance;  // k x k
    };
    std::size_t k_;
    double dof_;
    std::vector<Point> points_;
};

/// The mean of a series of day values: intercept only, the fast path of the same thing.
/// std::invalid_argument for fewer than two values.
TMixture ar1_mean(std::span<const double> y, std::span<const SeriesStep> steps,
                  const Ar1Prior& prior = {});

}  // namespace tracewright
