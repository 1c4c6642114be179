#include "inference/collinearity.hpp"

#include "inference/published_series.hpp"
#include "inference/statistics_row.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

using namespace tracewright;
using namespace tracewright::testing;

namespace {

std::vector<double> longley_columns() {
    std::vector<double> x;
    for (std::size_t i = 0; i < longley_gnp.size(); ++i) {
        x.insert(x.end(),
                 {longley_deflator[i], longley_gnp[i], longley_unemployed[i],
                  longley_armed_forces[i], longley_population[i], 1947.0 + static_cast<double>(i)});
    }
    return x;
}

}  // namespace

// reg-02. Source: Longley 1967, JASA 62:819; values computed by a general reference package.
TEST(Collinearity, reg_02_variance_inflation_of_longleys_columns) {
    const auto expected = statistics_row("reg-02").numbers();
    const Collinearity found = collinearity(longley_columns(), 6);
    ASSERT_EQ(expected.size(), 6U);
    for (std::size_t j = 0; j < 6; ++j) {
        EXPECT_NEAR(found.vif[j], expected[j], 1e-7 * expected[j]);
    }
}

// reg-03. Source: Belsley, Kuh & Welsch 1980 (method; 43275 from memory).
TEST(Collinearity, reg_03_condition_indices_with_the_intercept_scaled_to_unit_length) {
    const auto expected = statistics_row("reg-03").numbers();
    const Collinearity found = collinearity(longley_columns(), 6);
    ASSERT_EQ(expected.size(), 7U);
    for (std::size_t j = 0; j < 7; ++j) {
        EXPECT_NEAR(found.condition_indices[j], expected[j], 1e-6 * expected[j]);
    }
}

// night-02. Invented data.
TEST(Collinearity, night_02_two_habits_that_travel_together) {
    const auto expected = statistics_row("night-02").numbers();
    std::vector<double> x;
    for (std::size_t i = 0; i < nights_sleep.size(); ++i) {
        x.insert(x.end(), {nights_sleep[i], nights_carbohydrate[i]});
    }
    const double r = correlation(nights_sleep, nights_carbohydrate);
    EXPECT_NEAR(r, expected[0], 1e-9);
    EXPECT_NEAR(collinearity(x, 2).vif[0], expected[1], 1e-7);
    // The standardised pair's condition number has a closed form.
    EXPECT_NEAR(std::sqrt((1 - r) / (1 + r)), expected[2], 1e-8);
}

TEST(Collinearity, of_two_columns_is_the_closed_form_of_their_correlation) {
    const std::vector<double> a = {1, 2, 3, 4, 5};
    const std::vector<double> b = {2, 1, 4, 3, 6};
    std::vector<double> x;
    for (std::size_t i = 0; i < 5; ++i) {
        x.insert(x.end(), {a[i], b[i]});
    }
    const double r = correlation(a, b);
    EXPECT_NEAR(collinearity(x, 2).vif[1], 1 / (1 - r * r), 1e-12);
}

TEST(Collinearity, of_two_identical_columns_is_infinite_and_not_a_number_nowhere) {
    const std::vector<double> x = {1, 1, 2, 2, 4, 4, 3, 3};
    const Collinearity found = collinearity(x, 2);
    EXPECT_TRUE(std::isinf(found.vif[0]));
    EXPECT_FALSE(std::isnan(found.condition_indices.back()));
}

TEST(Collinearity, correlation_of_what_does_not_vary_is_zero) {
    EXPECT_EQ(correlation(std::vector<double>{1, 1, 1}, std::vector<double>{1, 2, 3}), 0);
    EXPECT_EQ(correlation(std::vector<double>{}, std::vector<double>{}), 0);
}

RC_GTEST_PROP(Collinearity, a_lone_column_is_never_inflated, ()) {
    const auto values = *rc::gen::container<std::vector<double>>(
        20, rc::gen::map(rc::gen::inRange(0, 1000), [](int i) { return i / 7.0; }));
    const double first = values.front();
    RC_PRE(std::any_of(values.begin(), values.end(), [&](double v) { return v != first; }));
    RC_ASSERT(std::abs(collinearity(values, 1).vif[0] - 1) < 1e-9);
}
