#include "measures/mean_swing.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace tracewright {

namespace {

double sample_sd(std::span<const double> values) {
    double mean = 0;
    for (const double v : values) {
        mean += v;
    }
    mean /= static_cast<double>(values.size());
    double squares = 0;
    for (const double v : values) {
        squares += (v - mean) * (v - mean);
    }
    return std::sqrt(squares / static_cast<double>(values.size() - 1));
}

std::vector<double> turning_points(std::span<const double> values) {
    std::vector<double> points;
    for (const double v : values) {
        if (!points.empty() && points.back() == v) {
            continue;
        }
        const std::size_t n = points.size();
        const bool goes_on = n >= 2 && (points[n - 1] > points[n - 2]) == (v > points[n - 1]);
        if (goes_on) {
            points.back() = v;
        } else {
            points.push_back(v);
        }
    }
    return points;
}

void drop_small_swings(std::vector<double>& points, double sd) {
    while (points.size() >= 2) {
        std::size_t smallest = 0;
        double size = std::abs(points[1] - points[0]);
        for (std::size_t i = 1; i + 1 < points.size(); ++i) {
            if (std::abs(points[i + 1] - points[i]) < size) {
                smallest = i;
                size = std::abs(points[i + 1] - points[i]);
            }
        }
        if (size > sd) {
            return;
        }
        const auto at = points.begin() + static_cast<std::ptrdiff_t>(smallest);
        if (smallest == 0) {
            points.erase(at);
        } else if (smallest + 2 == points.size()) {
            points.pop_back();
        } else {
            points.erase(at, at + 2);
        }
    }
}

}  // namespace

std::optional<MeanSwing> mean_swing(std::span<const double> values) {
    if (values.size() < 3) {
        return std::nullopt;
    }
    MeanSwing swing;
    swing.sd = sample_sd(values);
    std::vector<double> points = turning_points(values);
    drop_small_swings(points, swing.sd);
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
