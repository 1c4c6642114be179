#include "inference/theil_sen.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <vector>

using namespace tracewright;
using namespace tracewright::testing;

// rob-03. Source: Sen 1968, 10.1080/01621459.1968.10480934 (method); value of a general package.
TEST(TheilSen, rob_03_five_points) {
    const std::vector<double> x = {1, 2, 3, 4, 5};
    const std::vector<double> y = {1.26, 1.27, 1.12, 1.16, 1.03};
    const auto row = statistics_row("rob-03");
    const MedianLine line = theil_sen(x, y);
    EXPECT_NEAR(line.slope, row.after("slope")[0], 1e-10);
    EXPECT_NEAR(line.intercept, row.after("intercept")[0], 1e-10);
    EXPECT_NEAR(line.slope95[0], row.after("95%")[0], 1e-10);
    EXPECT_NEAR(line.slope95[1], row.after("95%")[1], 1e-10);
}

TEST(TheilSen, one_wild_point_moves_nothing) {
    const std::vector<double> x = {1, 2, 3, 4, 5, 6, 7};
    const std::vector<double> y = {2, 4, 6, 800, 10, 12, 14};
    EXPECT_NEAR(theil_sen(x, y).slope, 2, 1e-12);
}

TEST(TheilSen, needs_two_points_apart) {
    EXPECT_THROW(theil_sen(std::vector<double>{1}, std::vector<double>{1}), std::invalid_argument);
}
