#pragma once

#include "findings/finding.hpp"
#include "inference/ar1_grid.hpp"
#include "inference/collinearity.hpp"
#include "inference/variance_shares.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// Complete rows (nights, days or meals) of one question: numbers alone.
struct DriverRows {
    std::vector<double> y;
    std::size_t drivers = 0;
    std::vector<double> x;  ///< n x drivers, row after row
    std::size_t adjusters = 0;
    std::vector<double> adjuster;   ///< n x adjusters
    std::vector<std::size_t> wear;  ///< of each row: like ones stand together
    std::vector<int> day;           ///< ascending within a wear

    std::size_t rows() const { return y.size(); }
};

/// What a driver must show and what its effect is told for.
struct DriverSetting {
    double change = 1;  ///< the change worth making, signed
    bool yes_no = false;
};

/// What no row is measured better than.
struct RowError {
    double least_sd = 0;  ///< of a row, in the unit of y
    double share = 0;     ///< SD of one wear's sensor as a share of every difference it tells
};

/// The gates, in the order in which they are asked (statistics 2.4).
enum class DriverGate { open, too_few, too_many_drivers, flat_outcome, no_contrast, inseparable };

struct DriverResult {
    DriverGate gate = DriverGate::open;
    double spread = 0;  ///< SD of the driver over the rows
    int yes = 0;        ///< rows with a yes, of a yes-or-no driver
    double vif = 1;
    double effect = 0;     ///< of `change`, in the unit of y
    double deviation = 0;  ///< half the central 68 % of its posterior
    std::array<double, 2> interval95{};
    double p = 1;           ///< 2 min(P, 1 - P)
    double p_adjusted = 1;  ///< Holm, over the drivers asked together
    double beyond = 0;      ///< the larger of P(effect > worth), P(effect < -worth)
    double within = 0;      ///< P(|effect| < worth)
    Answer answer = Answer::cannot_tell;
    /// Further rows of the same kind that would decide it, at today's estimate; empty: none in
    /// reach (over 120), or decided.
    std::optional<int> more_rows;
};

struct DriverFit {
    DriverGate gate = DriverGate::open;  ///< of all; `open` if any driver could be answered
    int rows = 0;
    double dof = 0;
    double correlation = 0;  ///< posterior median, from one row to the next
    std::vector<DriverResult> drivers;
    double largest_condition_index = 1;
    std::vector<std::size_t> adjusters;  ///< those that vary: held equal in the model
    double pair_correlation = 0;         ///< of the two most alike drivers that vary; 0 without two
    std::array<std::size_t, 2> pair{};
    std::vector<std::size_t>
        parts_them;  ///< rows on which the two of the pair part, farthest first
    /// Of the drivers that can't be told apart, one SD each to both sides, all together.
    std::optional<double> joint;
    std::array<double, 2> joint95{};
    VarianceShares shares;
};

/// Regression with AR(1) errors on the grid, an intercept for each wear, all drivers together.
/// Gates first: at least 10 rows and 6 degrees of freedom; at most one driver for six rows; a y
/// that varies within its wears; a driver's SD at least a quarter of `change` (4 yes and 4 no at
/// least); VIF under 5 and condition index under
/// 30. 'yes' needs P(beyond `worth` to one side) >= 0.9 and the adjusted p <= 0.05; 'no difference
/// worth acting on' P(within) >= 0.9; else can't tell.
/// Holm counts `asked_besides` further questions as if none of them had an answer. However alike
/// the rows are, `error` keeps an interval about each effect.
DriverFit driver_fit(const DriverRows& rows, const std::vector<DriverSetting>& settings,
                     double worth, std::size_t asked_besides = 0, const RowError& error = {});

/// The other drivers that were held equal beside this one: those in the model with it. Empty where
/// it was refused itself, or told only together with the others.
std::vector<std::size_t> accounted_for(const DriverFit& fit, std::size_t driver);

/// The model's own p of each driver without gates on the answer: for the scan.
double two_sided_p(const TMixture& posterior);

}  // namespace tracewright
