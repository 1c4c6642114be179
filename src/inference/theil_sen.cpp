#include "inference/theil_sen.hpp"

#include "inference/weighted_quantile.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace tracewright {

namespace {

constexpr double normal_975 = 1.959963984540054;

double median_of(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return quantile(values, 0.5);
}

}  // namespace

MedianLine theil_sen(std::span<const double> x, std::span<const double> y) {
    std::vector<double> slopes;
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            if (x[i] != x[j]) {
                slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
            }
        }
    }
    if (slopes.empty() || x.size() != y.size()) {
        throw std::invalid_argument("a median line needs two points apart");
    }
    std::sort(slopes.begin(), slopes.end());
    MedianLine line;
    line.slope = quantile(slopes, 0.5);
    line.intercept = median_of({y.begin(), y.end()}) - line.slope * median_of({x.begin(), x.end()});
    const auto n = static_cast<double>(x.size());
    const double sigma = std::sqrt(n * (n - 1) * (2 * n + 5) / 18);
    const auto count = static_cast<double>(slopes.size());
    const auto last = static_cast<long>(slopes.size()) - 1;
    const long upper = std::min(std::lround((count + normal_975 * sigma) / 2), last);
    const long lower = std::max(std::lround((count - normal_975 * sigma) / 2) - 1, 0L);
    line.slope95 = {slopes[static_cast<std::size_t>(lower)],
                    slopes[static_cast<std::size_t>(upper)]};
    return line;
}

}  // namespace tracewright
