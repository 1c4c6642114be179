#include "inference/several_questions.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace tracewright {

namespace {

std::vector<std::size_t> ascending(std::span<const double> p) {
    std::vector<std::size_t> order(p.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return p[a] < p[b]; });
    return order;
}

}  // namespace

std::vector<double> holm_adjusted(std::span<const double> p) {
    std::vector<double> adjusted(p.size());
    double largest = 0;
    std::size_t rank = 0;
    for (const std::size_t i : ascending(p)) {
        largest = std::max(largest, static_cast<double>(p.size() - rank) * p[i]);
        adjusted[i] = std::min(1.0, largest);
        ++rank;
    }
    return adjusted;
}

std::vector<double> benjamini_hochberg_adjusted(std::span<const double> p) {
    std::vector<double> adjusted(p.size());
    const std::vector<std::size_t> order = ascending(p);
    double smallest = 1;
    for (std::size_t rank = p.size(); rank > 0; --rank) {
        const std::size_t i = order[rank - 1];
        smallest =
            std::min(smallest, static_cast<double>(p.size()) / static_cast<double>(rank) * p[i]);
        adjusted[i] = smallest;
    }
    return adjusted;
}

}  // namespace tracewright
