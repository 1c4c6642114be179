#pragma once

#include "inference/ar1_grid.hpp"
#include "measures/day_sums.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// 95 % intervals of a window's measures with the day as the unit of evidence (statistics 5.1;
/// method note: docs/methods/intervals.md). Days less than 70 % seen are left out; under three days
/// there is no interval. None has zero width.
class DayIntervals {
  public:
    /// Keeps a view of `days`, which outlive it.
    DayIntervals(std::span<const DayOfTrace> days, std::uint64_t seed);

    int days() const { return static_cast<int>(valid_.size()); }
    /// Why there can be no interval; empty if there can.
    const std::string& none_because() const { return none_because_; }

    using DayValue = std::function<std::optional<double>(const DayOfTrace&)>;
    using Total = std::function<std::optional<double>(const GlucoseSums&)>;

    /// Of a mean of day values (AR(1) grid, intercept only), moved to the pooled `value` and kept
    /// above `least`. Empty where the days don't differ at all, or fewer than three have a value.
    std::optional<std::array<double, 2>> of_mean(double value, const DayValue& day_value,
                                                 std::optional<double> least = std::nullopt) const;

    /// Of a share of time in percent: as of a mean. Where that would reach 0 or 100 %, the days are
    /// taken on the logit of (share x n + 1/2) / (n + 1), n the hours sensed; where all days are
    /// there, the far end is the share at which stretches of one hour coming at random would be
    /// missed on all days with a chance of 5 % (ours).
    std::optional<std::array<double, 2>> of_share(double percent,
                                                  const DayValue& day_percent) const;

    /// Of a measure that is no mean: circular blocks of days, 1,999 draws, percentiles, widened by
    /// the ratio of the grid's to the bootstrap's half-width for the mean, never narrowed, and kept
    /// above 0.
    std::optional<std::array<double, 2>> of_total(double value, const Total& total) const;

    /// The same of a time-weighted median of a level function of the readings.
    std::optional<std::array<double, 2>> of_median(
        double value, const std::function<double(const Reading&)>& level) const;

  private:
    void draw() const;
    std::optional<std::array<double, 2>> widened(double value, std::vector<double> draws) const;

    std::vector<const DayOfTrace*> valid_;
    std::vector<SeriesStep> steps_;
    std::uint64_t seed_;
    std::string none_because_;
    // Filled at the first measure that needs them.
    mutable std::vector<std::uint16_t> counts_;
    mutable std::vector<GlucoseSums> totals_;
    mutable double widening_ = 1;
};

}  // namespace tracewright
