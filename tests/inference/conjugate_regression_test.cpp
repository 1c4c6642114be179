#include "inference/conjugate_regression.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

const std::vector<double> y = {150, 149, 140, 143, 135, 131};

std::vector<double> design() {
    std::vector<double> x;
    for (const double at : {5.5, 6.0, 6.5, 7.0, 7.5, 8.0}) {
        x.insert(x.end(), {1.0, at - 7});
    }
    return x;
}

}  // namespace

// bayes-01. Source: Gelman et al., Bayesian Data Analysis 3rd ed., ch. 14 (method); invented data.
TEST(ConjugateRegression, bayes_01) {
    const auto row = statistics_row("bayes-01");
    const auto found = conjugate_regression(y, design(), {{140, 0}, {400, 25}, 2, 50});
    EXPECT_NEAR(found.mean[0], row.after("post mean")[0], 1e-7);
    EXPECT_NEAR(found.mean[1], row.after("post mean")[1], 1e-7);
    EXPECT_EQ(found.dof, 10);
    EXPECT_NEAR(found.d, row.after("dn")[0], 1e-7);
    EXPECT_NEAR(found.scale[0], row.after("t scale")[0], 1e-7);
    EXPECT_NEAR(found.scale[1], row.after("t scale")[1], 1e-7);
    EXPECT_NEAR(found.coefficient(1).interval()[0], row.after("95% slope")[0], 1e-6);
    EXPECT_NEAR(found.coefficient(1).interval()[1], row.after("95% slope")[1], 1e-6);
    EXPECT_NEAR(found.coefficient(1).cdf(0), row.after("P(slope<0)")[0], 1e-7);
}

TEST(ConjugateRegression, a_prior_without_weight_gives_least_squares) {
    const auto row = statistics_row("bayes-01");
    const auto found = conjugate_regression(y, design(), {{0, 0}, {1e12, 1e12}, 0, 0});
    EXPECT_NEAR(found.mean[0], row.after("flat-prior OLS")[0], 1e-5);
    EXPECT_NEAR(found.mean[1], row.after("flat-prior OLS")[1], 1e-5);
}

TEST(ConjugateRegression, no_data_gives_the_prior) {
    const auto found = conjugate_regression({}, {}, {{140, 3}, {400, 25}, 2, 50});
    EXPECT_NEAR(found.mean[1], 3, 1e-12);
    EXPECT_NEAR(found.scale[1], 5 * 5, 1e-9);  // sqrt(25 x 50 / 2)
}

TEST(NormalTelling, the_surer_one_weighs_more_and_far_ones_disagree) {
    const NormalTelling both = joined({0, 1}, {3, 2});
    EXPECT_NEAR(both.mean, 0.6, 1e-12);
    EXPECT_NEAR(both.deviation, std::sqrt(0.8), 1e-12);
    EXPECT_FALSE(disagree({0, 1}, {2, 1}));
    EXPECT_TRUE(disagree({0, 1}, {3, 1}));
}
