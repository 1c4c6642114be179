#include "inference/weighted_quantile.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

using namespace tracewright;

namespace {

const std::vector<double> ten = {70, 82, 95, 99, 104, 120, 133, 151, 180, 240};
const std::vector<double> probabilities = {0.05, 0.25, 0.5, 0.75, 0.95};

std::vector<Weighted> weighted(const std::vector<double>& values, double weight) {
    std::vector<Weighted> result;
    for (const double v : values) {
        result.push_back({v, weight});
    }
    return result;
}

}  // namespace

// q-06, q-07, q-08. Source: Hyndman & Fan 1996, 10.1080/00031305.1996.10473566 (computed with R).
TEST(WeightedQuantile, q_06_to_q_08_named_types) {
    const std::vector<double> six = {70, 91.75, 112, 158.25, 240};
    const std::vector<double> seven = {75.4, 96, 112, 146.5, 213};
    const std::vector<double> eight = {70, 93.9166667, 112, 153.4166667, 240};
    for (std::size_t i = 0; i < probabilities.size(); ++i) {
        EXPECT_NEAR(quantile(ten, probabilities[i], QuantileType::type6), six[i], 1e-6);
        EXPECT_NEAR(quantile(ten, probabilities[i]), seven[i], 1e-6);
        EXPECT_NEAR(quantile(ten, probabilities[i], QuantileType::type8), eight[i], 1e-6);
    }
}

// q-10. Source: as q-07.
TEST(WeightedQuantile, q_10_one_to_ten) {
    const std::vector<double> values = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
    EXPECT_NEAR(quantile(values, 0.05), 1.45, 1e-9);
    EXPECT_NEAR(quantile(values, 0.75), 7.75, 1e-9);
    EXPECT_NEAR(quantile(values, 0.25, QuantileType::type8), 2.9166667, 1e-6);
    EXPECT_NEAR(quantile(values, 0.95, QuantileType::type6), 10, 1e-9);
}

TEST(WeightedQuantile, equal_weights_are_type_seven) {
    auto values = weighted(ten, 300);
    const auto found = weighted_quantiles(values, probabilities);
    for (std::size_t i = 0; i < probabilities.size(); ++i) {
        EXPECT_NEAR(found[i], quantile(ten, probabilities[i]), 1e-9);
    }
}

TEST(WeightedQuantile, one_value_gives_itself_and_none_gives_nothing) {
    auto one = weighted({42}, 7);
    EXPECT_EQ(weighted_quantiles(one, probabilities), std::vector<double>(5, 42.0));
    std::vector<Weighted> none;
    EXPECT_TRUE(weighted_quantiles(none, probabilities).empty());
}

RC_GTEST_PROP(WeightedQuantile, is_monotone_in_p_and_within_the_data, ()) {
    std::vector<Weighted> values;
    for (int i = *rc::gen::inRange(1, 30); i > 0; --i) {
        values.push_back({static_cast<double>(*rc::gen::inRange(40, 400)),
                          static_cast<double>(*rc::gen::inRange(1, 900))});
    }
    std::vector<double> grid;
    for (int i = 0; i <= 40; ++i) {
        grid.push_back(i / 40.0);
    }
    const auto found = weighted_quantiles(values, grid);
    RC_ASSERT(std::is_sorted(found.begin(), found.end()));
    RC_ASSERT(found.front() == values.front().value);
    RC_ASSERT(std::abs(found.back() - values.back().value) < 1e-9);
}

RC_GTEST_PROP(WeightedQuantile, scaling_all_weights_changes_nothing, ()) {
    std::vector<Weighted> values;
    std::vector<Weighted> scaled;
    for (int i = *rc::gen::inRange(1, 30); i > 0; --i) {
        values.push_back({static_cast<double>(*rc::gen::inRange(40, 400)),
                          static_cast<double>(*rc::gen::inRange(1, 900))});
        scaled.push_back({values.back().value, values.back().weight * 3});
    }
    const auto a = weighted_quantiles(values, probabilities);
    const auto b = weighted_quantiles(scaled, probabilities);
    for (std::size_t i = 0; i < a.size(); ++i) {
        RC_ASSERT(std::abs(a[i] - b[i]) < 1e-9);
    }
}

RC_GTEST_PROP(WeightedQuantile, the_median_is_the_quantile_at_a_half, ()) {
    const bool equal = *rc::gen::arbitrary<bool>();
    std::vector<Weighted> values;
    for (int i = *rc::gen::inRange(1, 30); i > 0; --i) {
        values.push_back({static_cast<double>(*rc::gen::inRange(40, 400)),
                          equal ? 300.0 : static_cast<double>(*rc::gen::inRange(1, 900))});
    }
    auto again = values;
    const std::vector<double> half = {0.5};
    RC_ASSERT(std::abs(weighted_median(values) - weighted_quantiles(again, half).front()) < 1e-9);
}
