#include "inference/two_wears.hpp"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <vector>

namespace tracewright {

namespace {

double mean_of(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

bool all_alike(std::span<const double> values) {
    return std::all_of(values.begin(), values.end(),
                       [&](double value) { return value == values.front(); });
}

}  // namespace

TwoWears two_wears(const WearDays& first, const WearDays& second, double sensor_sd,
                   double least_sd) {
    const std::size_t before = first.values.size();
    const std::size_t after = second.values.size();
    if (before < 2 || after < 2 || first.steps.size() != before || second.steps.size() != after) {
        throw std::invalid_argument("a difference needs two days of each wear, a step for each");
    }
    const double raw = mean_of(second.values) - mean_of(first.values);
    const bool match = first.match.size() == before && second.match.size() == after &&
                       !(all_alike(first.match) && all_alike(second.match));
    // Told from the first wear's mean: no digits are lost to a large level.
    const double level = mean_of(first.values);
    std::vector<double> y;
    std::vector<double> x;
    std::vector<SeriesStep> steps(first.steps.begin(), first.steps.end());
    steps.insert(steps.end(), second.steps.begin(), second.steps.end());
    steps[before].segment_start = true;
    for (std::size_t i = 0; i < before + after; ++i) {
        const bool of_second = i >= before;
        y.push_back((of_second ? second.values[i - before] : first.values[i]) - level);
        x.insert(x.end(), {1, of_second ? 1.0 : 0.0});
        if (match) {
            x.push_back(of_second ? second.match[i - before] : first.match[i]);
        }
    }
    const Ar1Grid grid(y, x, match ? 3 : 2, steps, least_sd);
    std::vector<double> of_first = {1, 0};
    if (match) {
        const auto days = static_cast<double>(before + after);
        of_first.push_back((mean_of(first.match) * static_cast<double>(before) +
                            mean_of(second.match) * static_cast<double>(after)) /
                           days);
    }
    const double fitted = level + grid.contrast(of_first).mean();
    TMixture days = grid.coefficient(1);
    TMixture difference = days.widened(sensor_sd);
    return {raw, fitted, grid.mean_correlation(), std::move(days), std::move(difference)};
}

}  // namespace tracewright
