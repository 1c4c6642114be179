// How things last and how two ways of measuring agree.
#include "inference/limits_of_agreement.hpp"
#include "inference/line_of_two_methods.hpp"
#include "inference/share_bounds.hpp"
#include "inference/survival.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numeric>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

// GEHAN: weeks of remission, + still in it. Source: Freireich et al. 1963,
// 10.1182/blood.V21.6.699.699; Gehan 1965, 10.1093/biomet/52.1-2.203.
std::vector<Lifetime> gehan() {
    std::vector<Lifetime> all;
    for (const int t : {10, 7, 23, 22, 6, 16, 6, 13, 6}) {
        all.push_back({static_cast<double>(t), true, 0});
    }
    for (const int t : {32, 34, 32, 25, 11, 20, 19, 17, 35, 9, 6, 10}) {
        all.push_back({static_cast<double>(t), false, 0});
    }
    for (const int t : {1, 22, 3, 12, 8, 17, 2, 11, 8, 12, 2, 5, 4, 15, 8, 23, 5, 11, 4, 1, 8}) {
        all.push_back({static_cast<double>(t), true, 1});
    }
    return all;
}

std::vector<Lifetime> arm(std::size_t group) {
    std::vector<Lifetime> all;
    for (const Lifetime& one : gehan()) {
        if (one.group == group) {
            all.push_back(one);
        }
    }
    return all;
}

struct TwoMeters {
    std::vector<double> large, mini;
};

// Bland & Altman 1986, 10.1016/S0140-6736(86)90837-8: two peak flow meters.
TwoMeters peak_flow() {
    const auto in = statistics_row("ba-01").inputs();
    return {{in.begin(), in.begin() + 17}, {in.begin() + 17, in.end()}};
}

}  // namespace

// km-01. Sources in the table and above.
TEST(Survival, km_01_shares_errors_and_medians_of_gehans_data) {
    const auto row = statistics_row("km-01");
    const Survival treated = survival(arm(0));
    const auto shares = row.after("23:");
    const auto errors = row.after("se");
    ASSERT_EQ(treated.steps.size(), 7U);
    for (std::size_t i = 0; i < 7; ++i) {
        EXPECT_NEAR(treated.steps[i].share, shares[i], 1e-6);
        EXPECT_NEAR(treated.steps[i].standard_error, errors[i], 1e-6);
    }
    EXPECT_EQ(treated.median, 23);
    EXPECT_EQ(treated.median95[0], 16);
    EXPECT_FALSE(treated.median95[1]);
    const Survival control = survival(arm(1));
    EXPECT_EQ(control.median, 8);
    EXPECT_EQ(control.median95[0], 4);
    EXPECT_EQ(control.median95[1], 12);
    EXPECT_EQ(treated.failures, 9);
    EXPECT_EQ(treated.count, 21);
    EXPECT_EQ(treated.share_after(5.9), 1);
    EXPECT_NEAR(treated.share_after(6), 18.0 / 21, 1e-12);
}

// km-02. Source in the table: R 4.2.2 survdiff, published figure matched.
TEST(Survival, km_02_log_rank_and_its_early_weights) {
    const auto row = statistics_row("km-02");
    const LogRank plain = log_rank(gehan());
    EXPECT_NEAR(plain.expected[0], row.after("expected")[0], 1e-5);
    EXPECT_NEAR(plain.expected[1], row.after("expected")[1], 1e-5);
    EXPECT_NEAR(plain.chi_squared, row.after("chi2")[0], 1e-5);
    EXPECT_NEAR(plain.p, row.after(", p")[0], 1e-9);
    EXPECT_NEAR(log_rank(gehan(), true).chi_squared, row.after("Peto-Peto")[0], 1e-5);
}

// km-03. Source in the table: R 4.2.2 coxph. The table's ratio is treated to control.
TEST(Survival, km_03_hazard_ratio_with_either_rule_of_ties) {
    const auto row = statistics_row("km-03");
    const auto efron = hazard_ratio(gehan(), Ties::efron);
    const auto breslow = hazard_ratio(gehan(), Ties::breslow);
    ASSERT_TRUE(efron && breslow);
    EXPECT_NEAR(efron->log_ratio, row.numbers()[0], 1e-6);
    EXPECT_NEAR(efron->standard_error, row.after("se")[0], 1e-6);
    EXPECT_NEAR(breslow->log_ratio, row.after("/")[0], 1e-6);
}

TEST(Survival, nothing_failed_or_nothing_there_is_no_step) {
    EXPECT_TRUE(survival({}).steps.empty());
    const Survival still = survival(std::vector<Lifetime>{{14, false}, {14, false}});
    EXPECT_TRUE(still.steps.empty());
    EXPECT_FALSE(still.median);
    EXPECT_EQ(log_rank(std::vector<Lifetime>{{14, false, 0}, {14, false, 1}}).p, 1);
    EXPECT_FALSE(hazard_ratio(std::vector<Lifetime>{{3, true, 0}, {14, false, 1}}));
    EXPECT_THROW(log_rank(std::vector<Lifetime>{{3, true, 2}}), std::invalid_argument);
}

// Without ends of looking the curve is the share that lasted longer.
RC_GTEST_PROP(Survival, without_censoring_is_the_plain_share, ()) {
    const auto days =
        *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 15)));
    std::vector<Lifetime> all;
    for (const int day : days) {
        all.push_back({static_cast<double>(day), true});
    }
    const Survival curve = survival(all);
    for (int day = 1; day < 15; ++day) {
        const auto lasted = std::count_if(days.begin(), days.end(), [&](int d) { return d > day; });
        RC_ASSERT(std::abs(curve.share_after(day) -
                           static_cast<double>(lasted) / static_cast<double>(days.size())) < 1e-12);
    }
}

// ba-01. Source in the table: Bland & Altman 1986.
TEST(LimitsOfAgreement, ba_01_two_peak_flow_meters) {
    const auto [large, mini] = peak_flow();
    const auto row = statistics_row("ba-01");
    const auto found = limits_of_agreement(mini, large);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->mean_difference, row.after("mean difference")[0], 1e-3);
    EXPECT_NEAR(found->sd, row.after("SD")[0], 1e-3);
    EXPECT_NEAR(found->mean_difference - 2 * found->sd, row.after("limits with 2 SD")[0], 0.01);
    EXPECT_NEAR(found->limits[0], row.after("1.96 SD")[0], 1e-3);
    EXPECT_NEAR(found->limits[1], row.after("1.96 SD")[1], 1e-3);
    EXPECT_NEAR(found->standard_error, row.after("se mean")[0], 1e-3);
    // The paper's 16.285 is sd sqrt(3 / n), the sum of the two terms with 1.96^2 taken for 4 and
    // n - 1 for n: ours is within a tenth of it.
    EXPECT_NEAR(std::sqrt(3.0 / 17) * found->sd, row.after("se limit")[0], 1e-3);
    EXPECT_NEAR(found->standard_error_of_limits, row.after("se limit")[0], 0.1 * 16.285);
    EXPECT_FALSE(limits_of_agreement({large.data(), 1}, {mini.data(), 1}));
}

TEST(LimitsOfAgreement, clusters_alike_inside_widen_the_limits_to_their_true_spread) {
    // Four sensors off by -15, -5, 5, 15 with five pairs each that hardly vary: by analysis of
    // variance within 1 (by hand), between 500/3 less 1/5.
    std::vector<double> first, second;
    std::vector<int> cluster;
    const double around[] = {-1, -1, 0, 1, 1};
    const double off[] = {-15, -5, 5, 15};
    for (int c = 0; c < 4; ++c) {
        for (const double e : around) {
            first.push_back(120);
            second.push_back(120 + off[c] + e);
            cluster.push_back(c);
        }
    }
    const auto found = limits_of_agreement_clustered(first, second, cluster);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->mean_difference, 0, 1e-12);
    EXPECT_NEAR(found->sd, std::sqrt(1 + 500.0 / 3 - 1 / 5.0), 1e-9);
    const auto plain = limits_of_agreement(first, second);
    EXPECT_GT(found->standard_error, 1.9 * plain->standard_error);
    EXPECT_FALSE(limits_of_agreement_clustered(first, second, std::vector<int>(20, 1)));
}

// dem-01: Pearson 1901, 10.1080/14786440109462720. dem-02: Bland & Altman's data, closed form.
TEST(LineOfTwoMethods, dem_01_and_dem_02_by_deming) {
    const auto in = statistics_row("dem-01").inputs();
    const std::vector<double> x(in.begin(), in.begin() + 10);
    const std::vector<double> y(in.begin() + 10, in.end());
    const auto pearson = deming_line(x, y);
    ASSERT_TRUE(pearson);
    EXPECT_NEAR(pearson->slope, statistics_row("dem-01").after("slope")[0], 1e-8);
    EXPECT_NEAR(pearson->intercept, statistics_row("dem-01").after("intercept")[0], 1e-8);
    const auto [large, mini] = peak_flow();
    const auto meters = deming_line(large, mini);
    EXPECT_NEAR(meters->slope, statistics_row("dem-02").after("slope")[0], 1e-8);
    EXPECT_NEAR(meters->intercept, statistics_row("dem-02").after("intercept")[0], 1e-7);
    ASSERT_TRUE(meters->slope95);
    EXPECT_LT((*meters->slope95)[0], 0.97);
    EXPECT_GT((*meters->slope95)[1], 0.97);
    EXPECT_FALSE(deming_line({x.data(), 2}, {y.data(), 2}));
}

// pb-01. Source in the table: Passing & Bablok 1983, worked out twice elsewhere.
TEST(LineOfTwoMethods, pb_01_by_passing_and_bablok) {
    const auto [large, mini] = peak_flow();
    const auto row = statistics_row("pb-01");
    const auto found = passing_bablok_line(large, mini);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->line.slope, row.after("slope")[0], 1e-8);
    EXPECT_NEAR((*found->line.slope95)[0], row.after("95%")[0], 1e-8);
    EXPECT_NEAR((*found->line.slope95)[1], row.after("95%")[1], 1e-8);
    EXPECT_NEAR(found->line.intercept, row.after("intercept")[0], 1e-6);
    EXPECT_EQ(found->slopes, 135U);
    EXPECT_EQ(found->offset, 13U);
}

TEST(LineOfTwoMethods, a_straight_line_is_found_by_both) {
    std::vector<double> x, y;
    for (int i = 0; i < 12; ++i) {
        x.push_back(50 + 10 * i);
        y.push_back(4 + 1.1 * x.back());
    }
    EXPECT_NEAR(deming_line(x, y)->slope, 1.1, 1e-9);
    EXPECT_NEAR(passing_bablok_line(x, y)->line.slope, 1.1, 1e-9);
    EXPECT_NEAR(passing_bablok_line(x, y)->line.intercept, 4, 1e-9);
}

// 170 of 200: exact 0.8021 (glycaemia 8.3, arithmetic); all of 10: 0.05^(1/10).
TEST(ShareBounds, the_exact_lower_bound_and_how_many_are_needed) {
    EXPECT_NEAR(lower_bound_of_share(170, 200), 0.8021, 5e-5);
    EXPECT_NEAR(lower_bound_of_share(10, 10), std::pow(0.05, 0.1), 1e-12);
    EXPECT_EQ(lower_bound_of_share(0, 10), 0);
    EXPECT_EQ(looks_needed(0.85), 19);
}
