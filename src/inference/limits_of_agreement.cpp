#include "inference/limits_of_agreement.hpp"

#include "inference/student_t.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <vector>

namespace tracewright {

namespace {

constexpr double covers_95 = 1.96;

void same_length(std::size_t a, std::size_t b) {
    if (a != b) {
        throw std::invalid_argument("pairs have a first and a second value each");
    }
}

// `units`: what the errors rest on.
void set_intervals(LimitsOfAgreement& result, double units) {
    result.limits = {result.mean_difference - covers_95 * result.sd,
                     result.mean_difference + covers_95 * result.sd};
    result.standard_error_of_limits =
        std::sqrt(result.standard_error * result.standard_error +
                  result.sd * result.sd * covers_95 * covers_95 / (2 * (units - 1)));
    const double t = student_t_quantile(0.975, units - 1);
    const auto round = [&](double centre, double error) {
        return std::array{centre - t * error, centre + t * error};
    };
    result.mean95 = round(result.mean_difference, result.standard_error);
    result.limits95 = {round(result.limits[0], result.standard_error_of_limits),
                       round(result.limits[1], result.standard_error_of_limits)};
}

double mean_of(std::span<const double> values) {
    double sum = 0;
    for (const double value : values) {
        sum += value;
    }
    return sum / static_cast<double>(values.size());
}

double squares_about(std::span<const double> values, double centre) {
    double sum = 0;
    for (const double value : values) {
        sum += (value - centre) * (value - centre);
    }
    return sum;
}

}  // namespace

std::optional<LimitsOfAgreement> limits_of_agreement(std::span<const double> first,
                                                     std::span<const double> second) {
    same_length(first.size(), second.size());
    if (first.size() < 2) {
        return std::nullopt;
    }
    std::vector<double> apart(first.size());
    for (std::size_t i = 0; i < apart.size(); ++i) {
        apart[i] = second[i] - first[i];
    }
    LimitsOfAgreement result;
    const auto n = static_cast<double>(apart.size());
    result.pairs = apart.size();
    result.mean_difference = mean_of(apart);
    result.sd = std::sqrt(squares_about(apart, result.mean_difference) / (n - 1));
    result.standard_error = result.sd / std::sqrt(n);
    set_intervals(result, n);
    return result;
}

std::optional<LimitsOfAgreement> limits_of_agreement_clustered(std::span<const double> first,
                                                               std::span<const double> second,
                                                               std::span<const int> cluster) {
    same_length(first.size(), second.size());
    same_length(first.size(), cluster.size());
    std::map<int, std::vector<double>> by_cluster;
    for (std::size_t i = 0; i < first.size(); ++i) {
        by_cluster[cluster[i]].push_back(second[i] - first[i]);
    }
    const auto n = static_cast<double>(first.size());
    const auto clusters = static_cast<double>(by_cluster.size());
    if (clusters < 2 || n <= clusters) {
        return std::nullopt;
    }
    LimitsOfAgreement result;
    result.pairs = first.size();
    double within = 0;
    double squared_sizes = 0;
    for (const auto& [name, apart] : by_cluster) {
        const auto size = static_cast<double>(apart.size());
        result.mean_difference += mean_of(apart) * size / n;
        within += squares_about(apart, mean_of(apart));
        squared_sizes += size * size;
    }
    double between = 0;
    for (const auto& [name, apart] : by_cluster) {
        between += static_cast<double>(apart.size()) *
                   std::pow(mean_of(apart) - result.mean_difference, 2);
    }
    const double within_variance = within / (n - clusters);
    const double typical_size = (n - squared_sizes / n) / (clusters - 1);
    const double between_variance =
        std::max(0.0, (between / (clusters - 1) - within_variance) / typical_size);
    result.sd = std::sqrt(within_variance + between_variance);
    result.standard_error =
        std::sqrt(within_variance / n + between_variance * squared_sizes / (n * n));
    set_intervals(result, clusters);
    return result;
}

}  // namespace tracewright
