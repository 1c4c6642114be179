#include "inference/weighted_quantile.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace tracewright {

std::vector<double> weighted_quantiles(std::vector<Weighted>& values,
                                       std::span<const double> probabilities) {
    if (values.empty()) {
        return {};
    }
    std::sort(values.begin(), values.end(), [](const Weighted& a, const Weighted& b) {
        return a.value < b.value || (a.value == b.value && a.weight < b.weight);
    });
    double total = 0;
    for (const Weighted& v : values) {
        total += v.weight;
    }
    const auto n = static_cast<double>(values.size());
    std::vector<double> result;
    std::size_t k = 0;
    double before = 0;  // sum of weights before k
    // Position of value k on the scale of p, times (n - 1) * total.
    const auto position = [&](std::size_t i, double sum_before) {
        return static_cast<double>(i) * values[i].weight + (n - 1) * sum_before;
    };
    for (const double p : probabilities) {
        const double wanted = p * (n - 1) * total;
        while (k + 1 < values.size() && position(k + 1, before + values[k].weight) <= wanted) {
            before += values[k].weight;
            ++k;
        }
        if (k + 1 == values.size() || wanted <= position(k, before)) {
            result.push_back(values[k].value);
            continue;
        }
        const double from = position(k, before);
        const double to = position(k + 1, before + values[k].weight);
        result.push_back(
            std::lerp(values[k].value, values[k + 1].value, (wanted - from) / (to - from)));
    }
    return result;
}

double weighted_median(std::vector<Weighted>& values) {
    const bool equal = std::all_of(values.begin(), values.end(), [&](const Weighted& v) {
        return v.weight == values.front().weight;
    });
    if (!equal) {
        constexpr std::array half{0.5};
        return weighted_quantiles(values, half).front();
    }
    const auto less = [](const Weighted& a, const Weighted& b) { return a.value < b.value; };
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end(), less);
    if (values.size() % 2 == 1) {
        return middle->value;
    }
    return std::midpoint(std::max_element(values.begin(), middle, less)->value, middle->value);
}

double quantile(std::span<const double> sorted, double p, QuantileType type) {
    const auto n = static_cast<double>(sorted.size());
    double h = (n - 1) * p + 1;  // type 7
    if (type == QuantileType::type6) {
        h = (n + 1) * p;
    } else if (type == QuantileType::type8) {
        h = (n + 1.0 / 3) * p + 1.0 / 3;
    }
    h = std::clamp(h, 1.0, n);
    const auto below = static_cast<std::size_t>(h) - 1;
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    return std::lerp(sorted[below], sorted[above], h - std::floor(h));
}

}  // namespace tracewright
