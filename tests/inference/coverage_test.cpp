// Size and coverage of the grid regression on simulated days (statistics 2.3, 5.1 and 14.1: bounds
// of the project's own simulations, no published table).
#include "inference/ar1_grid.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

using namespace tracewright;

namespace {

std::vector<SeriesStep> in_a_row(std::size_t n) {
    std::vector<SeriesStep> steps(n);
    steps[0].segment_start = true;
    return steps;
}

std::vector<double> autoregressive(std::mt19937& random, std::size_t n, double rho) {
    std::normal_distribution<double> normal{0, 1};
    std::vector<double> series(n);
    double u = normal(random);
    for (double& y : series) {
        y = u;
        u = rho * u + std::sqrt(1 - rho * rho) * normal(random);
    }
    return series;
}

}  // namespace

TEST(Coverage, intervals_of_a_mean_cover_near_what_they_claim) {
    struct Row {
        std::size_t days;
        double rho, least, most;
    };
    const Row rows[] = {{7, 0.0, 0.93, 0.995},
                        {14, 0.0, 0.93, 0.99},
                        {14, 0.3, 0.90, 0.98},
                        {14, 0.5, 0.84, 0.96},
                        {28, 0.3, 0.92, 0.98}};
    constexpr int draws = 1500;
    for (const Row& row : rows) {
        std::mt19937 random{20260302};
        int covered = 0;
        for (int d = 0; d < draws; ++d) {
            const auto interval =
                ar1_mean(autoregressive(random, row.days, row.rho), in_a_row(row.days)).interval();
            covered += interval[0] <= 0 && 0 <= interval[1] ? 1 : 0;
        }
        const double share = static_cast<double>(covered) / draws;
        RecordProperty("coverage_" + std::to_string(row.days) + "_" + std::to_string(row.rho),
                       std::to_string(share));
        EXPECT_GE(share, row.least) << row.days << " days, correlation " << row.rho;
        EXPECT_LE(share, row.most) << row.days << " days, correlation " << row.rho;
    }
}

// statistics 14.1: false positives within 0.03 to 0.08 at correlations up to 0.3.
TEST(Coverage, a_driver_without_effect_is_seldom_found) {
    for (const std::size_t n : {std::size_t{14}, std::size_t{28}}) {
        std::mt19937 random{7};
        int found = 0;
        constexpr int draws = 1500;
        for (int d = 0; d < draws; ++d) {
            const auto y = autoregressive(random, n, 0.3);
            const auto driver = autoregressive(random, n, 0.3);
            std::vector<double> x;
            for (const double value : driver) {
                x.insert(x.end(), {1.0, value});
            }
            const auto interval = Ar1Grid(y, x, 2, in_a_row(n)).coefficient(1).interval();
            found += interval[0] > 0 || interval[1] < 0 ? 1 : 0;
        }
        const double share = static_cast<double>(found) / draws;
        EXPECT_GE(share, 0.03) << n;
        EXPECT_LE(share, 0.08) << n;
    }
}
