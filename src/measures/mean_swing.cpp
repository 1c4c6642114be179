#include "measures/mean_swing.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace tracewright {

namespace {

// Four sums side by side: one would wait for itself at every step.
template <typename Term>
double sum_of(std::span<const double> values, Term term) {
    double sums[4] = {0, 0, 0, 0};
    std::size_t i = 0;
    for (; i + 4 <= values.size(); i += 4) {
        for (std::size_t lane = 0; lane < 4; ++lane) {
            sums[lane] += term(values[i + lane]);
        }
    }
    for (; i < values.size(); ++i) {
        sums[0] += term(values[i]);
    }
    return (sums[0] + sums[1]) + (sums[2] + sums[3]);
}

double sample_sd(std::span<const double> values) {
    const auto n = static_cast<double>(values.size());
    const double mean = sum_of(values, [](double v) { return v; }) / n;
    return std::sqrt(sum_of(values, [&](double v) { return (v - mean) * (v - mean); }) / (n - 1));
}

// What is left once every swing of `sd` or less has gone, the smallest first: the turns that a
// walk confirms when glucose has come back from the farthest point by more than that. Both ways
// keep the same levels: a swing goes for good with both its points, and takes no larger one along.
std::vector<double> large_swings(std::span<const double> values, double sd) {
    std::vector<double> points;
    double lowest = values.front();
    double highest = values.front();
    bool up = false;
    for (const double v : values) {
        lowest = std::min(lowest, v);
        highest = std::max(highest, v);
        if ((points.empty() || !up) && v - lowest > sd) {
            points.push_back(lowest);
            up = true;
            highest = v;
        } else if ((points.empty() || up) && highest - v > sd) {
            points.push_back(highest);
            up = false;
            lowest = v;
        }
    }
    if (!points.empty()) {
        points.push_back(up ? highest : lowest);
    }
    return points;
}

}  // namespace

std::optional<MeanSwing> mean_swing(std::span<const double> values) {
    if (values.size() < 3) {
        return std::nullopt;
    }
    MeanSwing swing;
    swing.sd = sample_sd(values);
    const std::vector<double> points = large_swings(values, swing.sd);
    if (points.size() < 2) {
        return std::nullopt;
    }
    double sums[2] = {0, 0};
    int counts[2] = {0, 0};
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const bool up = points[i + 1] > points[i];
        sums[up] += std::abs(points[i + 1] - points[i]);
        ++counts[up];
    }
    swing.first_upward = points[1] > points[0];
    if (counts[1] > 0) {
        swing.up = sums[1] / counts[1];
    }
    if (counts[0] > 0) {
        swing.down = sums[0] / counts[0];
    }
    swing.first_direction = swing.first_upward ? *swing.up : *swing.down;
    swing.both = (sums[0] + sums[1]) / (counts[0] + counts[1]);
    return swing;
}

}  // namespace tracewright
