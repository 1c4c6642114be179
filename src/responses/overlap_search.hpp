#pragma once

#include "responses/overlap_days.hpp"
#include "responses/overlap_model.hpp"

#include <Eigen/Dense>

#include <cstddef>
#include <limits>
#include <span>
#include <vector>

namespace tracewright {

/// One choice of kernel, correlation and ridge, and what came of it.
struct OverlapTrial {
    double peak = 0;
    double correlation = 0;
    double deviation = 0;                                     ///< of amplitudes about their mean
    double noise = 0;                                         ///< deviation of the errors
    double score = -std::numeric_limits<double>::infinity();  ///< log density of days left out
    Eigen::VectorXd baseline;
    std::vector<std::vector<double>> amplitudes;  ///< by day
    std::vector<double> means;                    ///< by group
};

/// Fits of the overlap model to one client's days. An occasion is drawn towards the mean of its
/// group: its food's if eaten twice or more, else its slot's.
class OverlapSearch {
  public:
    /// `days` tell their occasions by index into `occasions`.
    OverlapSearch(std::span<const EatingOccasion> occasions, std::vector<OverlapDay> days,
                  std::size_t wears);

    const std::vector<OverlapDay>& days() const { return days_; }

    /// The best of all by how well each day is predicted from the others: one line through the grid
    /// at a time, then halfway about what was found.
    OverlapTrial best(const OverlapSettings& settings) const;

    /// The best of `deviations` at one kernel and correlation: the sums of a day are made once.
    OverlapTrial best_at(double peak, double correlation, std::span<const double> deviations) const;

    /// The amplitudes of one day, the trial's baseline, noise and means given: ridged, not
    /// negative.
    std::vector<double> amplitudes(const DayNormals& day, const OverlapDay& of,
                                   const OverlapTrial& trial) const;

    double mean_for(const OverlapDay& day, std::size_t meal, const OverlapTrial& trial) const {
        return trial.means[groups_[day.occasions[meal]]];
    }

    /// Squared misfit of a day's whitened rows.
    static double misfit(const DayNormals& day, const Eigen::VectorXd& baseline,
                         std::span<const double> amplitudes);

  private:
    std::vector<OverlapDay> days_;
    std::size_t wears_;
    std::vector<std::size_t> groups_;
    std::size_t group_count_ = 0;

    void fit(OverlapTrial& trial, const std::vector<DayNormals>& sums) const;
    Eigen::VectorXd baseline_without(const OverlapTrial& trial, const std::vector<DayNormals>& sums,
                                     std::size_t left_out) const;
    std::vector<double> means_without(const OverlapTrial& trial, std::size_t left_out) const;
    double left_out_score(const OverlapTrial& trial, const std::vector<DayNormals>& sums) const;
};

}  // namespace tracewright
