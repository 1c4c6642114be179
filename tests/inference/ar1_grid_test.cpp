#include "inference/ar1_grid.hpp"

#include "inference/published_series.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <stdexcept>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

std::vector<SeriesStep> in_a_row(std::size_t n) {
    std::vector<SeriesStep> steps(n);
    steps[0].segment_start = true;
    return steps;
}

std::vector<double> nights_design() {
    std::vector<double> x;
    for (std::size_t i = 0; i < nights_sleep.size(); ++i) {
        x.insert(x.end(), {1.0, nights_sleep[i] - 7, (nights_carbohydrate[i] - 60) / 10});
    }
    return x;
}

const std::vector<double> wear_before = {61, 58, 70, 66, 55, 63, 72, 59, 64, 68, 57, 62, 69, 60};
const std::vector<double> wear_after = {66, 71, 63, 74, 69, 60, 77, 70, 65, 73, 68, 72, 64, 75};

}  // namespace

// night-06. Source: the method itself by an independent script (computed); data invented.
TEST(Ar1Grid, night_06_posterior_of_sleep_and_dinner) {
    const Ar1Grid fit(nights_fasting, nights_design(), 3, in_a_row(28));
    EXPECT_NEAR(fit.mean_correlation(), 0.1355638331, 1e-7);
    EXPECT_NEAR(fit.coefficient(0).mean(), 137.0232928, 1e-5);
    EXPECT_NEAR(fit.coefficient(1).mean(), -2.640802047, 1e-6);
    EXPECT_NEAR(fit.coefficient(2).mean(), 4.284164105, 1e-6);
    const TMixture sleep = fit.coefficient(1);
    EXPECT_NEAR(sleep.quantile(0.5), -2.636519402, 3e-6);
    EXPECT_NEAR(sleep.interval()[0], -5.019023229, 5e-6);
    EXPECT_NEAR(sleep.interval()[1], -0.2870480722, 5e-6);
    EXPECT_NEAR(sleep.cdf(0), 0.9852455251, 1e-6);
    EXPECT_NEAR(fit.coefficient(2).interval()[0], 3.404999332, 5e-6);
    EXPECT_NEAR(fit.coefficient(2).interval()[1], 5.156945824, 5e-6);
}

// wear-01. Source: the method by an independent script (computed); data invented.
TEST(Ar1Grid, wear_01_two_fortnights_restart_at_the_wear) {
    std::vector<double> y = wear_before;
    y.insert(y.end(), wear_after.begin(), wear_after.end());
    std::vector<double> x;
    std::vector<SeriesStep> steps = in_a_row(28);
    steps[14].segment_start = true;
    for (std::size_t i = 0; i < 28; ++i) {
        x.insert(x.end(), {1.0, i < 14 ? 0.0 : 1.0});
    }
    const Ar1Grid fit(y, x, 2, steps);
    const TMixture difference = fit.coefficient(1);
    EXPECT_NEAR(difference.mean(), 5.855405873, 6e-6);
    EXPECT_NEAR(difference.quantile(0.5), 5.841734075, 6e-6);
    EXPECT_NEAR(difference.interval()[0], 2.423815266, 6e-6);
    EXPECT_NEAR(difference.interval()[1], 9.367319802, 1e-5);
    EXPECT_NEAR(difference.probability_above(0), 0.9983167802, 1e-6);
    EXPECT_NEAR(difference.probability_above(5), 0.7003078561, 1e-6);
    EXPECT_NEAR(fit.mean_correlation(), -0.1616490871, 1e-6);
}

// night-03. Source: R 4.2.2 nlme::gls, REML (computed); data invented.
TEST(Ar1Grid, night_03_agrees_with_restricted_likelihood_at_its_correlation) {
    const auto fit = Ar1Grid::fit_at(0.08857695, nights_fasting, nights_design(), 3, in_a_row(28));
    EXPECT_NEAR(fit.b[0], 137.0283034, 137 * 1e-4);
    EXPECT_NEAR(fit.b[1], -2.643684188, 2.6 * 1e-4);
    EXPECT_NEAR(fit.b[2], 4.283527658, 4.3 * 1e-4);
    EXPECT_NEAR(fit.standard_error[0], 0.4508687, 0.45 * 1e-4);
    EXPECT_NEAR(fit.standard_error[1], 1.155367174, 1.2 * 1e-4);
    EXPECT_NEAR(fit.standard_error[2], 0.4281359, 0.43 * 1e-4);
}

// reg-04. Source: Longley data; Faraway 2005, Linear Models with R, ch. 6 (figure from memory,
// matched by recomputation with R nlme::gls).
TEST(Ar1Grid, reg_04_longley_at_the_published_correlation) {
    std::vector<double> x;
    for (std::size_t i = 0; i < longley_gnp.size(); ++i) {
        x.insert(x.end(), {1.0, longley_gnp[i], longley_population[i]});
    }
    const auto fit = Ar1Grid::fit_at(0.644169, longley_employed, x, 3, in_a_row(16));
    EXPECT_NEAR(fit.b[0], 101.85813, 102 * 1e-4);
    EXPECT_NEAR(fit.b[1], 0.0720709, 0.072 * 1e-4);
    EXPECT_NEAR(fit.b[2], -0.5485135, 0.55 * 1e-4);
    EXPECT_NEAR(fit.standard_error[0], 14.19893, 14 * 1e-4);
    EXPECT_NEAR(fit.standard_error[1], 0.0106057, 0.0106 * 1e-4);
    EXPECT_NEAR(fit.standard_error[2], 0.1541297, 0.154 * 1e-4);
    EXPECT_NEAR(fit.sigma, 0.689207, 0.69 * 1e-4);
}

// reg-06. Source: Lake Huron levels, Brockwell & Davis 1991; R 4.2.2 nlme::gls REML (computed).
TEST(Ar1Grid, reg_06_lake_huron_at_the_restricted_optimum) {
    std::vector<double> x;
    for (std::size_t i = 0; i < huron.size(); ++i) {
        x.insert(x.end(), {1.0, 1875.0 + static_cast<double>(i) - 1920.0});
    }
    const auto fit = Ar1Grid::fit_at(0.824767, huron, x, 2, in_a_row(huron.size()));
    EXPECT_NEAR(fit.b[0], 579.174280, 579 * 1e-4);
    EXPECT_NEAR(fit.b[1], -0.0194346, 0.0194 * 1e-3);
    EXPECT_NEAR(fit.standard_error[0], 0.394985, 0.395 * 1e-4);
    EXPECT_NEAR(fit.standard_error[1], 0.0126641, 0.0127 * 1e-4);
}

// night-01. Without correlation the fit is ordinary least squares; R 4.2.2 lm (computed).
TEST(Ar1Grid, night_01_without_correlation_is_least_squares) {
    const auto fit = Ar1Grid::fit_at(0, nights_fasting, nights_design(), 3, in_a_row(28));
    const std::vector<double> b = {137.024052736, -2.689690941, 4.270852746};
    const std::vector<double> se = {0.4287469303, 1.2036302254, 0.4452632568};
    for (std::size_t j = 0; j < b.size(); ++j) {
        EXPECT_NEAR(fit.b[j], b[j], 1e-8 * std::abs(b[j]));
        EXPECT_NEAR(fit.standard_error[j], se[j], 1e-8 * se[j]);
    }
    EXPECT_NEAR(fit.sigma, 1.878754742, 2e-8);
}

// reg-08. Lake Huron without correlation: the standard error a naive fit would print, a third of
// reg-06. R 4.2.2 lm (computed).
TEST(Ar1Grid, reg_08_lake_huron_without_correlation) {
    std::vector<double> x;
    for (std::size_t i = 0; i < huron.size(); ++i) {
        x.insert(x.end(), {1.0, 1875.0 + static_cast<double>(i) - 1920.0});
    }
    const auto fit = Ar1Grid::fit_at(0, huron, x, 2, in_a_row(huron.size()));
    EXPECT_NEAR(fit.b[1], -0.0242011106, 1e-10);
    EXPECT_NEAR(fit.standard_error[1], 0.0040361079, 1e-10);
    EXPECT_NEAR(fit.b[1] / fit.standard_error[1], -5.99615055, 1e-7);
}

// reg-01. Longley 1967, JASA 62:819; digits certified by NIST StRD (from memory, matched by R 4.2.2
// lm): nearly dependent columns, condition index 43,275.
TEST(Ar1Grid, reg_01_longley_on_all_six_columns) {
    std::vector<double> x;
    for (std::size_t i = 0; i < longley_gnp.size(); ++i) {
        x.insert(x.end(),
                 {1.0, longley_deflator[i], longley_gnp[i], longley_unemployed[i],
                  longley_armed_forces[i], longley_population[i], 1947 + static_cast<double>(i)});
    }
    const auto fit = Ar1Grid::fit_at(0, longley_employed, x, 7, in_a_row(16));
    const std::vector<double> b = {-3482.258634596,  0.0150618722714,  -0.0358191792926,
                                   -0.0202022980382, -0.0103322686717, -0.0511041056536,
                                   1.82915146461};
    for (std::size_t j = 0; j < b.size(); ++j) {
        EXPECT_NEAR(fit.b[j], b[j], 1e-8 * std::abs(b[j])) << j;
    }
}

TEST(Ar1Grid, the_fast_mean_is_the_regression_on_a_constant) {
    const std::vector<double> ones(wear_before.size(), 1.0);
    std::vector<SeriesStep> steps = in_a_row(wear_before.size());
    steps[5].gap = 3;
    steps[9].segment_start = true;
    const TMixture slow = Ar1Grid(wear_before, ones, 1, steps).coefficient(0);
    const TMixture fast = ar1_mean(wear_before, steps);
    EXPECT_NEAR(slow.mean(), fast.mean(), 1e-9);
    for (const double p : {0.001, 0.025, 0.5, 0.9, 0.999}) {
        EXPECT_NEAR(slow.quantile(p), fast.quantile(p), 1e-7) << p;
    }
}

TEST(Ar1Grid, equal_values_have_an_interval_of_no_width_and_no_nan) {
    const std::vector<double> flat(10, 7.0);
    const TMixture mean = ar1_mean(flat, in_a_row(10));
    EXPECT_EQ(mean.interval()[0], 7.0);
    EXPECT_EQ(mean.interval()[1], 7.0);
}

TEST(Ar1Grid, rows_without_noise_give_numbers_and_no_interval_narrower_than_they_are_measured) {
    std::vector<double> x;
    std::vector<double> y;
    for (int i = 0; i < 14; ++i) {
        const double with = i % 2 == 0 ? 1 : 0;
        x.insert(x.end(), {with, 1});
        y.push_back(95.25 - 35.25 * with);
    }
    for (const double least : {0.0, 1.0}) {
        const Ar1Grid grid(y, x, 2, in_a_row(14), least);
        const TMixture found = grid.coefficient(0);
        const auto interval = found.interval();
        EXPECT_NEAR(found.mean(), -35.25, 1e-6) << least;
        EXPECT_TRUE(std::isfinite(found.cdf(0))) << least;
        EXPECT_TRUE(std::isfinite(grid.median_correlation())) << least;
        EXPECT_GT(interval[1], interval[0]) << least;
        EXPECT_GE(interval[1] - interval[0], least) << least;
    }
}

TEST(Ar1Grid, what_cannot_be_fitted_is_refused) {
    const std::vector<double> y{1, 2, 3};
    EXPECT_THROW(ar1_mean(std::vector<double>{1.0}, in_a_row(1)), std::invalid_argument);
    EXPECT_THROW(Ar1Grid(y, std::vector<double>(9, 1.0), 3, in_a_row(3)), std::invalid_argument);
    const std::vector<double> twice{1, 1, 1, 1, 1, 1};
    EXPECT_THROW(Ar1Grid(y, twice, 2, in_a_row(3)), std::invalid_argument);
}

// Property 2 of the method notes: a change of unit scales estimates and leaves probabilities alone.
RC_GTEST_PROP(Ar1Grid, a_change_of_unit_scales_the_estimate_and_leaves_probabilities, ()) {
    const double factor = *rc::gen::inRange(1, 400) / 20.0;
    std::vector<double> scaled;
    for (const double y : nights_fasting) {
        scaled.push_back(y * factor);
    }
    const TMixture before =
        Ar1Grid(nights_fasting, nights_design(), 3, in_a_row(28)).coefficient(1);
    const TMixture after = Ar1Grid(scaled, nights_design(), 3, in_a_row(28)).coefficient(1);
    RC_ASSERT(std::abs(after.mean() - factor * before.mean()) < 1e-6 * factor);
    RC_ASSERT(std::abs(after.cdf(0) - before.cdf(0)) < 1e-9);
}

RC_GTEST_PROP(Ar1Grid, quantiles_rise_with_the_probability, ()) {
    std::vector<double> y;
    for (int i = *rc::gen::inRange(2, 20); i > 0; --i) {
        y.push_back(*rc::gen::inRange(0, 100));
    }
    const TMixture mean = ar1_mean(y, in_a_row(y.size()));
    double previous = -1e300;
    for (const double p : {0.01, 0.025, 0.2, 0.5, 0.8, 0.975, 0.99}) {
        RC_ASSERT(mean.quantile(p) >= previous);
        previous = mean.quantile(p);
    }
}
