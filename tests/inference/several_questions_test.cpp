#include "inference/several_questions.hpp"

#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>

#include <algorithm>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

int at_most(const std::vector<double>& values, double limit) {
    return static_cast<int>(
        std::count_if(values.begin(), values.end(), [&](double v) { return v <= limit; }));
}

}  // namespace

// mult-01. Source: Benjamini & Hochberg 1995, 10.1111/j.2517-6161.1995.tb02031.x.
TEST(SeveralQuestions, mult_01_benjamini_and_hochberg_on_their_fifteen) {
    const auto row = statistics_row("mult-01");
    const auto expected = row.numbers();
    const auto found = benjamini_hochberg_adjusted(row.inputs());
    ASSERT_EQ(found.size(), 15U);
    for (std::size_t i = 0; i < found.size(); ++i) {
        EXPECT_NEAR(found[i], expected[i], 1e-9) << i;
    }
    EXPECT_EQ(at_most(found, 0.05), 4);
    EXPECT_EQ(at_most(found, 0.10), 9);
}

// mult-02. Source: Holm 1979, Scand J Stat 6:65.
TEST(SeveralQuestions, mult_02_holm_on_the_same) {
    const auto row = statistics_row("mult-02");
    const auto expected = row.numbers();
    const auto found = holm_adjusted(row.inputs());
    for (std::size_t i = 0; i < 9; ++i) {
        EXPECT_NEAR(found[i], expected[i], 1e-9) << i;
    }
    EXPECT_EQ(at_most(found, 0.05), 3);
}

TEST(SeveralQuestions, keep_the_order_in_which_they_came) {
    const std::vector<double> p = {0.5, 0.01, 0.2};
    EXPECT_EQ(holm_adjusted(p), (std::vector<double>{0.5, 0.03, 0.4}));
    const auto bh = benjamini_hochberg_adjusted(p);
    EXPECT_NEAR(bh[0], 0.5, 1e-15);
    EXPECT_NEAR(bh[1], 0.03, 1e-15);
    EXPECT_NEAR(bh[2], 0.3, 1e-15);
}

TEST(SeveralQuestions, none_and_one) {
    EXPECT_TRUE(holm_adjusted({}).empty());
    EXPECT_TRUE(benjamini_hochberg_adjusted({}).empty());
    EXPECT_EQ(holm_adjusted(std::vector<double>{0.04}), std::vector<double>{0.04});
}
