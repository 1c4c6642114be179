#include "inference/shrinkage.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

// Source: Rubin 1981, 10.3102/10769986006004377.
const std::vector<GroupMean> eight_schools = {{28, 15}, {8, 10}, {-3, 16}, {7, 11},
                                              {-1, 9},  {1, 11}, {18, 10}, {12, 18}};

std::vector<GroupMean> bcg_trials() {
    const std::vector<double> both = statistics_row("re-01").inputs();
    std::vector<GroupMean> groups;
    // "13 BCG trials" stands before the pairs.
    for (std::size_t i = 1; i + 1 < both.size(); i += 2) {
        groups.push_back({both[i], std::sqrt(both[i + 1])});
    }
    return groups;
}

void expect_near(const std::vector<double>& found, const std::vector<double>& expected,
                 double within) {
    ASSERT_GE(expected.size(), found.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_NEAR(found[i], expected[i], within) << i;
    }
}

}  // namespace

// es-01.
TEST(Shrinkage, es_01_complete_pooling_of_eight_schools) {
    const auto row = statistics_row("es-01");
    const MomentShrinkage found = moment_shrinkage(eight_schools);
    EXPECT_NEAR(found.common_mean, row.after("mean")[0], 1e-4);
    EXPECT_NEAR(found.standard_error, row.after("se ")[0], 1e-4);
    EXPECT_NEAR(found.heterogeneity, row.after("; Q")[0], 1e-4);
    EXPECT_EQ(found.spread_squared, 0);
}

// es-02. The row integrates the spread over all of (0, inf): here to 200, finely.
TEST(Shrinkage, es_02_exact_posterior_of_eight_schools) {
    const auto row = statistics_row("es-02");
    const Shrinkage fit(eight_schools, 200, 8001);
    EXPECT_NEAR(fit.common_mean(), row.after("E mu")[0], 0.01);
    EXPECT_NEAR(fit.common_deviation(), row.after("sd ")[0], 0.02);
    EXPECT_NEAR(fit.spread_mean(), row.after("E tau")[0], 0.02);
    EXPECT_NEAR(fit.spread_quantile(0.5), row.after("median")[0], 0.01);
    EXPECT_NEAR(fit.spread_quantile(0.025), row.after("95%")[0], 0.01);
    std::vector<double> means, deviations, medians, lows, highs;
    for (std::size_t j = 0; j < 8; ++j) {
        means.push_back(fit.mean(j));
        deviations.push_back(fit.deviation(j));
        medians.push_back(fit.quantile(j, 0.5));
        lows.push_back(fit.quantile(j, 0.025));
        highs.push_back(fit.quantile(j, 0.975));
    }
    expect_near(means, row.after("theta mean"), 0.01);
    expect_near(deviations, row.after("theta sd"), 0.01);
    expect_near(medians, row.after("medians"), 0.011);
    expect_near(lows, row.after("2.5%"), 0.02);
    expect_near(highs, row.after("97.5%"), 0.03);
}

// re-01, re-02. Source: the 13 BCG trials as in Berkey et al. 1995; values of a general package.
TEST(Shrinkage, re_01_and_re_02_of_the_bcg_trials) {
    const auto groups = bcg_trials();
    ASSERT_EQ(groups.size(), 13U);
    const auto row = statistics_row("re-01");
    const MomentShrinkage by_moments = moment_shrinkage(groups);
    EXPECT_NEAR(by_moments.common_mean, row.after("DL mu")[0], 1e-6);
    EXPECT_NEAR(by_moments.standard_error, row.after("se")[0], 1e-6);
    EXPECT_NEAR(by_moments.spread_squared, row.after("tau2")[0], 1e-6);
    const MomentShrinkage by_likelihood = restricted_likelihood_shrinkage(groups);
    EXPECT_NEAR(by_likelihood.common_mean, row.after("REML")[0], 1e-5);
    expect_near(by_likelihood.shrunken, statistics_row("re-02").after("BLUP"), 1e-4);
}

// food-01. Invented; values of a general package.
TEST(Shrinkage, food_01_means_of_six_foods) {
    const double means[] = {68, 41, 55, 30, 74, 48};
    const double eaten[] = {1, 6, 3, 8, 2, 5};
    std::vector<GroupMean> groups;
    for (std::size_t i = 0; i < 6; ++i) {
        groups.push_back({means[i], 22 / std::sqrt(eaten[i])});
    }
    const auto row = statistics_row("food-01");
    const MomentShrinkage by_moments = moment_shrinkage(groups);
    EXPECT_NEAR(by_moments.common_mean, row.after("DL mu")[0], 1e-4);
    EXPECT_NEAR(by_moments.spread_squared, row.after("tau2")[0], 1e-4);
    expect_near(by_moments.shrunken, row.after("BLUP"), 1e-4);
    const MomentShrinkage by_likelihood = restricted_likelihood_shrinkage(groups);
    EXPECT_NEAR(by_likelihood.spread_squared, row.after("REML tau2")[0], 1e-3);
    expect_near(by_likelihood.shrunken,
                StatisticsRow::numbers_in(row.expected.substr(row.expected.rfind("BLUP") + 4)),
                1e-4);
    EXPECT_NEAR(by_moments.heterogeneity, row.after("; Q")[0], 1e-6);
}

TEST(Shrinkage, a_mean_lies_between_its_own_and_the_common_one) {
    const Shrinkage fit(eight_schools, 60);
    for (std::size_t j = 0; j < eight_schools.size(); ++j) {
        const double own = eight_schools[j].mean;
        EXPECT_GE(fit.mean(j), std::min(own, -3.0));
        EXPECT_LE(std::abs(fit.mean(j) - fit.common_mean()), std::abs(own - fit.common_mean()) + 1);
    }
}

// Values of groups are the same as their means; a column that differs by group is held equal.
TEST(Shrinkage, single_values_say_what_their_means_say) {
    const std::vector<double> level = {40, 55, 70, 52};
    std::vector<GroupMean> means;
    std::vector<GroupValue> values;
    std::vector<GroupValue> later;
    for (std::size_t group = 0; group < level.size(); ++group) {
        const std::size_t times = group + 2;
        means.push_back({level[group], 20 / std::sqrt(static_cast<double>(times))});
        for (std::size_t i = 0; i < times; ++i) {
            const double off = i == 0 ? 6.0 : i == 1 ? -6.0 : 0.0;
            values.push_back({group, level[group] + off, 20, {1}});
            // Groups 2 and 3 are eaten later in the day, when all rises by 100 more.
            const double late = group > 1 ? 1 : 0;
            later.push_back({group, level[group] + off + 100 * late, 20, {1 - late, late}});
        }
    }
    const Shrinkage of_means(means, 60);
    const Shrinkage of_values(values, std::vector<double>{1}, 60);
    for (std::size_t j = 0; j < level.size(); ++j) {
        EXPECT_NEAR(of_values.mean(j), of_means.mean(j), 1e-9);
        EXPECT_NEAR(of_values.deviation(j), of_means.deviation(j), 1e-9);
        EXPECT_NEAR(of_values.own_mean(j), level[j], 1e-9);
    }
    EXPECT_NEAR(of_values.probability_above(2, 0), of_means.probability_above(2, 0), 1e-9);
    EXPECT_EQ(of_values.ranks(0.8, 1, 3).interval, of_means.ranks(0.8, 1, 3).interval);
    const Shrinkage apart(later, std::vector<double>{0.5, 0.5}, 60);
    EXPECT_LT(apart.probability_above(2, 0), 0.9);  // not by the 100
    EXPECT_GT(apart.probability_above(1, 0), 0.5);
    EXPECT_THROW(Shrinkage(std::vector<GroupValue>{{0, 1, 1, {1, 1}}, {1, 2, 1, {1, 1}}},
                           std::vector<double>{1, 1}, 60),
                 std::invalid_argument);
}

TEST(Shrinkage, two_equal_groups_are_even_and_a_far_one_is_above) {
    const Shrinkage fit(std::vector<GroupMean>{{10, 1}, {10, 1}, {40, 1}}, 60);
    EXPECT_NEAR(fit.probability_above(0, 1), 0.5, 1e-12);
    EXPECT_GT(fit.probability_above(2, 0), 0.999);
    EXPECT_NEAR(fit.probability_above(2, 0) + fit.probability_above(0, 2), 1, 1e-12);
    const auto ranks = fit.ranks(0.8, 1, 3);
    EXPECT_EQ(ranks.interval[2], (std::array<int, 2>{1, 1}));
    EXPECT_GT(ranks.in_top[2], 0.999);
    EXPECT_EQ(ranks.interval[0], (std::array<int, 2>{2, 3}));
}

TEST(Shrinkage, the_same_seed_gives_the_same_ranks) {
    const Shrinkage fit(eight_schools, 60);
    EXPECT_EQ(fit.ranks(0.8, 3, 5).in_top, fit.ranks(0.8, 3, 5).in_top);
}

TEST(Shrinkage, refuses_no_groups_and_no_error) {
    EXPECT_THROW(Shrinkage({}, 60), std::invalid_argument);
    EXPECT_THROW(Shrinkage(std::vector<GroupMean>{{1, 0}}, 60), std::invalid_argument);
}
