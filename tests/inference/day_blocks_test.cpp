#include "inference/day_blocks.hpp"

#include "inference/published_series.hpp"

#include <gtest/gtest.h>

#include <numeric>

using namespace tracewright;
using namespace tracewright::testing;

// boot-01. Source: Kuensch 1989, 10.1214/aos/1176347265; data LH, Diggle 1990 (computed twice).
TEST(DayBlocks, boot_01_moving_blocks) {
    const std::pair<std::size_t, double> rows[] = {{1, 0.006206597222},
                                                   {4, 0.01234557613},
                                                   {6, 0.01192867015},
                                                   {8, 0.0103863028},
                                                   {12, 0.004241234478}};
    for (const auto& [length, variance] : rows) {
        EXPECT_NEAR(moving_block_variance(lh, length), variance, 1e-9 * variance * 10) << length;
    }
}

// boot-02. Source: Politis & Romano 1992; data LH (computed twice).
TEST(DayBlocks, boot_02_circular_blocks) {
    const std::pair<std::size_t, double> rows[] = {
        {4, 0.01224392361}, {6, 0.01166521991}, {8, 0.01074761285}, {12, 0.008292824074}};
    for (const auto& [length, variance] : rows) {
        EXPECT_NEAR(circular_block_variance(lh, length), variance, 1e-10) << length;
    }
}

// boot-03. Source: Politis & Romano 1994, 10.1080/01621459.1994.10476870; data LH (computed twice).
TEST(DayBlocks, boot_03_stationary_blocks) {
    const std::pair<double, double> rows[] = {
        {4, 0.0102005158}, {6, 0.009225850599}, {8, 0.00827328167}, {12, 0.006822977285}};
    for (const auto& [length, variance] : rows) {
        EXPECT_NEAR(stationary_block_variance(lh, length), variance, 1e-10) << length;
    }
}

// neff-01. Method: Bayley & Hammersley 1946 (computed).
TEST(DayBlocks, neff_01_effective_sample_sizes) {
    EXPECT_NEAR(effective_sample_size(14, 0.3), 7.911037873, 1e-7);
    EXPECT_NEAR(effective_sample_size(14, 0.5), 5.157861599, 1e-7);
    EXPECT_NEAR(effective_sample_size(28, 0.3), 15.44051447, 1e-7);
    EXPECT_NEAR(effective_sample_size(28, 0.5), 9.799999998, 1e-7);
    EXPECT_NEAR(effective_sample_size(4032, 0.97), 61.90500239, 1e-6);
}

TEST(DayBlocks, every_resample_has_as_many_days_as_there_were) {
    const auto counts = block_counts(14, 2, 500, 7);
    for (std::size_t draw = 0; draw < 500; ++draw) {
        EXPECT_EQ(std::accumulate(counts.begin() + static_cast<std::ptrdiff_t>(draw * 14),
                                  counts.begin() + static_cast<std::ptrdiff_t>(draw * 14 + 14), 0),
                  14);
    }
    EXPECT_EQ(counts, block_counts(14, 2, 500, 7));
    EXPECT_NE(counts, block_counts(14, 2, 500, 8));
    EXPECT_TRUE(block_counts(0, 2, 10, 1).empty());
}

// The draws and the closed form are two ways to one number.
TEST(DayBlocks, the_draws_spread_as_the_closed_form_says) {
    const std::size_t draws = 20000;
    const auto counts = block_counts(lh.size(), 8, draws, 20260302);
    double sum = 0;
    double squares = 0;
    for (std::size_t d = 0; d < draws; ++d) {
        double mean = 0;
        for (std::size_t i = 0; i < lh.size(); ++i) {
            mean += counts[d * lh.size() + i] * lh[i] / static_cast<double>(lh.size());
        }
        sum += mean;
        squares += mean * mean;
    }
    const double variance = squares / draws - (sum / draws) * (sum / draws);
    EXPECT_NEAR(variance, circular_block_variance(lh, 8), 0.04 * variance);
}
