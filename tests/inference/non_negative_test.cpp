#include "inference/non_negative.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace tracewright;

namespace {

double misfit(const std::vector<double>& a, std::size_t k, const std::vector<double>& b,
              const std::vector<double>& x) {
    double sum = 0;
    for (std::size_t i = 0; i < b.size(); ++i) {
        double fitted = 0;
        for (std::size_t j = 0; j < k; ++j) {
            fitted += a[i * k + j] * x[j];
        }
        sum += (b[i] - fitted) * (b[i] - fitted);
    }
    return std::sqrt(sum);
}

}  // namespace

// nnls-01. Source: Lawson & Hanson 1974 (method); example of a general package's manual.
TEST(NonNegative, nnls_01_all_unknowns_free) {
    const std::vector<double> a = {1, 0, 1, 0, 0, 1};
    const std::vector<double> b = {2, 1, 1};
    const auto x = non_negative_least_squares(a, 2, b);
    EXPECT_NEAR(x[0], 1.5, 1e-10);
    EXPECT_NEAR(x[1], 1, 1e-10);
    EXPECT_NEAR(misfit(a, 2, b, x), 0.7071067812, 1e-10);
}

// nnls-02. The same source.
TEST(NonNegative, nnls_02_all_held_at_zero) {
    const std::vector<double> a = {1, 0, 1, 0, 0, 1};
    const std::vector<double> b = {-1, -1, -1};
    const auto x = non_negative_least_squares(a, 2, b);
    EXPECT_EQ(x, (std::vector<double>{0, 0}));
    EXPECT_NEAR(misfit(a, 2, b, x), 1.7320508076, 1e-10);
}

// Three unknowns: the best over all eight choices of free ones, each by a plain search.
RC_GTEST_PROP(NonNegative, nothing_near_it_fits_better, ()) {
    const auto numbers = *rc::gen::container<std::vector<int>>(24, rc::gen::inRange(-9, 10));
    std::vector<double> a(numbers.begin(), numbers.begin() + 18);
    const std::vector<double> b(numbers.begin() + 18, numbers.end());
    for (std::size_t i = 0; i < 3; ++i) {
        a[i * 3 + i] += 20;  // independent columns
    }
    const auto x = non_negative_least_squares(a, 3, b);
    const double best = misfit(a, 3, b, x);
    for (std::size_t j = 0; j < 3; ++j) {
        RC_ASSERT(x[j] >= 0);
        for (const double step : {-0.001, 0.001, -0.1, 0.1}) {
            auto near = x;
            near[j] = std::max(0.0, near[j] + step);
            RC_ASSERT(misfit(a, 3, b, near) >= best - 1e-9);
        }
    }
}

TEST(NonNegative, two_identical_columns_give_a_finite_answer) {
    const auto x =
        non_negative_least_squares(std::vector<double>{1, 1, 2, 2}, 2, std::vector<double>{2, 4});
    EXPECT_NEAR(x[0] + x[1], 2, 1e-9);
    EXPECT_TRUE(std::isfinite(x[0]));
}
