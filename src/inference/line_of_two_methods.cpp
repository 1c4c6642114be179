#include "inference/line_of_two_methods.hpp"

#include "inference/student_t.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <vector>

namespace tracewright {

namespace {

void same_length(std::size_t a, std::size_t b) {
    if (a != b) {
        throw std::invalid_argument("pairs have a first and a second value each");
    }
}

struct Sums {
    double x = 0, y = 0, xx = 0, yy = 0, xy = 0;
    double n = 0;
};

// About a fixed point near the data, so that little is lost.
Sums sums_of(std::span<const double> x, std::span<const double> y) {
    Sums sums;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double dx = x[i] - x[0];
        const double dy = y[i] - y[0];
        sums.x += dx;
        sums.y += dy;
        sums.xx += dx * dx;
        sums.yy += dy * dy;
        sums.xy += dx * dy;
        sums.n += 1;
    }
    return sums;
}

std::optional<double> deming_slope(const Sums& s, double ratio) {
    const double xx = s.xx - s.x * s.x / s.n;
    const double yy = s.yy - s.y * s.y / s.n;
    const double xy = s.xy - s.x * s.y / s.n;
    if (xy == 0) {
        return std::nullopt;
    }
    const double apart = yy - ratio * xx;
    return (apart + std::sqrt(apart * apart + 4 * ratio * xy * xy)) / (2 * xy);
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t n = values.size();
    return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
}

}  // namespace

std::optional<LineOfTwoMethods> deming_line(std::span<const double> first,
                                            std::span<const double> second, double variance_ratio) {
    same_length(first.size(), second.size());
    if (first.size() < 3) {
        return std::nullopt;
    }
    const Sums all = sums_of(first, second);
    const auto slope = deming_slope(all, variance_ratio);
    if (!slope) {
        return std::nullopt;
    }
    LineOfTwoMethods line{*slope, 0, std::nullopt};
    line.intercept = (second[0] + all.y / all.n) - *slope * (first[0] + all.x / all.n);
    double mean = 0;
    std::vector<double> without;
    for (std::size_t i = 0; i < first.size(); ++i) {
        const double dx = first[i] - first[0];
        const double dy = second[i] - second[0];
        const auto one = deming_slope({all.x - dx, all.y - dy, all.xx - dx * dx, all.yy - dy * dy,
                                       all.xy - dx * dy, all.n - 1},
                                      variance_ratio);
        if (!one) {
            return line;
        }
        without.push_back(*one);
        mean += *one / all.n;
    }
    double squares = 0;
    for (const double one : without) {
        squares += (one - mean) * (one - mean);
    }
    const double error = std::sqrt(squares * (all.n - 1) / all.n);
    const double t = student_t_quantile(0.975, all.n - 2);
    line.slope95 = {{*slope - t * error, *slope + t * error}};
    return line;
}

std::optional<PassingBablok> passing_bablok_line(std::span<const double> first,
                                                 std::span<const double> second) {
    same_length(first.size(), second.size());
    const std::size_t n = first.size();
    if (n < 3) {
        return std::nullopt;
    }
    constexpr double upright = std::numeric_limits<double>::infinity();
    std::vector<double> slopes;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = i + 1; j < n; ++j) {
            const double dx = first[j] - first[i];
            const double dy = second[j] - second[i];
            if (dx == 0 && dy == 0) {
                continue;
            }
            const double slope = dx == 0 ? (dy > 0 ? upright : -upright) : dy / dx;
            if (slope != -1) {
                slopes.push_back(slope);
            }
        }
    }
    if (slopes.empty()) {
        return std::nullopt;
    }
    std::sort(slopes.begin(), slopes.end());
    PassingBablok result;
    const std::size_t count = slopes.size();
    result.slopes = count;
    result.offset = static_cast<std::size_t>(std::lower_bound(slopes.begin(), slopes.end(), -1.0) -
                                             slopes.begin());
    const auto at = [&](std::size_t place) {  // 1-based
        return slopes[std::min(std::max<std::size_t>(place + result.offset, 1), count) - 1];
    };
    result.line.slope =
        count % 2 == 1 ? at((count + 1) / 2) : (at(count / 2) + at(count / 2 + 1)) / 2;
    std::vector<double> intercepts(n);
    for (std::size_t i = 0; i < n; ++i) {
        intercepts[i] = second[i] - result.line.slope * first[i];
    }
    result.line.intercept = median(std::move(intercepts));
    const auto points = static_cast<double>(n);
    const double wide =
        1.959963984540054 * std::sqrt(points * (points - 1) * (2 * points + 5) / 18);
    const auto low = std::lround((static_cast<double>(count) - wide) / 2);
    if (low >= 1) {
        const auto from = static_cast<std::size_t>(low);
        result.line.slope95 = {{at(from), at(count - from + 1)}};
    }
    return result;
}

}  // namespace tracewright
