#include "inference/grubbs.hpp"

#include <gtest/gtest.h>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace tracewright;

// The two-sided 5 % limits of Grubbs & Beck 1972, Technometrics 14:847,
// 10.1080/00401706.1972.10488981; values from memory.
TEST(Grubbs, limits_are_those_of_the_printed_table) {
    struct Row {
        double n;
        double limit;
    };
    for (const Row& row : {Row{7, 2.020}, Row{10, 2.290}, Row{14, 2.507}, Row{20, 2.709}}) {
        EXPECT_NEAR(grubbs_limit(row.n), row.limit, 0.001) << row.n;
    }
}

TEST(Grubbs, one_in_twenty_samples_of_noise_passes_its_limit) {
    boost::random::mt19937_64 engine(5);
    boost::random::normal_distribution<double> normal;
    int passed = 0;
    constexpr int draws = 4000;
    for (int draw = 0; draw < draws; ++draw) {
        std::vector<double> values(14);
        std::generate(values.begin(), values.end(), [&] { return normal(engine); });
        double mean = 0;
        for (const double value : values) {
            mean += value / 14;
        }
        double squares = 0;
        double farthest = 0;
        for (const double value : values) {
            squares += (value - mean) * (value - mean);
            farthest = std::max(farthest, std::abs(value - mean));
        }
        passed += farthest / std::sqrt(squares / 13) > grubbs_limit(14) ? 1 : 0;
    }
    EXPECT_NEAR(passed / static_cast<double>(draws), 0.05, 0.011);  // three standard errors
}
