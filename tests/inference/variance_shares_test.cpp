#include "inference/variance_shares.hpp"

#include "inference/published_series.hpp"
#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>

#include <numeric>

using namespace tracewright;
using namespace tracewright::testing;

// night-05. Invented data; method of Lindeman, Merenda & Gold 1980.
TEST(VarianceShares, night_05_most_of_what_sleep_and_dinner_explain_is_shared) {
    const auto expected = statistics_row("night-05").numbers();
    std::vector<double> x;
    for (std::size_t i = 0; i < nights_sleep.size(); ++i) {
        x.insert(x.end(), {nights_sleep[i], nights_carbohydrate[i]});
    }
    const VarianceShares found = variance_shares(nights_fasting, x, 2);
    EXPECT_NEAR(explained_share(nights_fasting, x, 2, 1), expected[0], 1e-9);
    EXPECT_NEAR(explained_share(nights_fasting, x, 2, 2), expected[1], 1e-9);
    EXPECT_NEAR(found.all, expected[2], 1e-9);
    EXPECT_NEAR(found.even[0], expected[3], 1e-9);
    EXPECT_NEAR(found.even[1], expected[4], 1e-9);
    EXPECT_NEAR(found.unique[0], expected[5], 1e-9);
    EXPECT_NEAR(found.unique[1], expected[6], 1e-9);
    EXPECT_NEAR(found.shared, expected[7], 1e-9);
}

// lmg-01. Source: Groemping 2006, 10.18637/jss.v017.i01.
TEST(VarianceShares, lmg_01_of_swiss_fertility) {
    const auto expected = statistics_row("lmg-01").numbers();
    std::vector<double> x;
    for (std::size_t i = 0; i < swiss_fertility.size(); ++i) {
        x.insert(x.end(), {swiss_agriculture[i], swiss_examination[i], swiss_education[i],
                           swiss_catholic[i], swiss_infant_mortality[i]});
    }
    const VarianceShares found = variance_shares(swiss_fertility, x, 5);
    for (std::size_t j = 0; j < 5; ++j) {
        EXPECT_NEAR(found.even[j], expected[j], 1e-8);
    }
    EXPECT_NEAR(std::accumulate(found.even.begin(), found.even.end(), 0.0), expected[5], 1e-8);
}

TEST(VarianceShares, of_columns_at_right_angles_are_all_unique) {
    const std::vector<double> x = {1, 1, 1, -1, -1, 1, -1, -1};
    const std::vector<double> y = {5, 3, 1, 0};
    const VarianceShares found = variance_shares(y, x, 2);
    EXPECT_NEAR(found.shared, 0, 1e-12);
    EXPECT_NEAR(found.unique[0], found.even[0], 1e-12);
}

TEST(VarianceShares, nothing_is_explained_of_what_does_not_vary) {
    EXPECT_EQ(explained_share(std::vector<double>{2, 2, 2}, std::vector<double>{1, 2, 4}, 1, 1), 0);
}
