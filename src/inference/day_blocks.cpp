#include "inference/day_blocks.hpp"

#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tracewright {

namespace {

double mean_of(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

// (l / n) times the mean squared distance of block means from `centre`.
double scaled_spread(const std::vector<double>& means, double centre, std::size_t length,
                     std::size_t n) {
    double sum = 0;
    for (const double m : means) {
        sum += (m - centre) * (m - centre);
    }
    return static_cast<double>(length) / static_cast<double>(n) * sum /
           static_cast<double>(means.size());
}

std::vector<double> block_means(std::span<const double> series, std::size_t length,
                                std::size_t blocks) {
    std::vector<double> means;
    for (std::size_t start = 0; start < blocks; ++start) {
        double sum = 0;
        for (std::size_t i = 0; i < length; ++i) {
            sum += series[(start + i) % series.size()];
        }
        means.push_back(sum / static_cast<double>(length));
    }
    return means;
}

}  // namespace

std::vector<std::uint16_t> block_counts(std::size_t days, std::size_t length, std::size_t draws,
                                        std::uint64_t seed) {
    std::vector<std::uint16_t> counts(days * draws, 0);
    if (days == 0) {
        return counts;
    }
    boost::random::mt19937_64 engine(seed);
    boost::random::uniform_int_distribution<std::size_t> start(0, days - 1);
    for (std::size_t draw = 0; draw < draws; ++draw) {
        std::uint16_t* row = counts.data() + draw * days;
        for (std::size_t taken = 0; taken < days;) {
            const std::size_t from = start(engine);
            for (std::size_t i = 0; i < length && taken < days; ++i, ++taken) {
                ++row[(from + i) % days];
            }
        }
    }
    return counts;
}

std::size_t block_length_for(std::size_t days) {
    return days < 3 ? 1 : days <= 20 ? 2 : 3;
}

double moving_block_variance(std::span<const double> series, std::size_t length) {
    const auto means = block_means(series, length, series.size() - length + 1);
    return scaled_spread(means, mean_of(means), length, series.size());
}

double circular_block_variance(std::span<const double> series, std::size_t length) {
    return scaled_spread(block_means(series, length, series.size()), mean_of(series), length,
                         series.size());
}

double stationary_block_variance(std::span<const double> series, double length) {
    const std::size_t n = series.size();
    const auto count = static_cast<double>(n);
    const double p = 1 / length;
    const double centre = mean_of(series);
    const auto covariance = [&](std::size_t lag) {
        double sum = 0;
        for (std::size_t i = 0; i + lag < n; ++i) {
            sum += (series[i] - centre) * (series[i + lag] - centre);
        }
        return sum / count;
    };
    double sum = covariance(0);
    for (std::size_t i = 1; i < n; ++i) {
        const auto lag = static_cast<double>(i);
        const double weight =
            (1 - lag / count) * std::pow(1 - p, lag) + lag / count * std::pow(1 - p, count - lag);
        sum += 2 * weight * covariance(i);
    }
    return sum / count;
}

double effective_sample_size(std::size_t n, double rho) {
    const auto count = static_cast<double>(n);
    double sum = 0;
    double power = 1;
    for (std::size_t k = 1; k < n; ++k) {
        power *= rho;
        sum += (1 - static_cast<double>(k) / count) * power;
    }
    return count / (1 + 2 * sum);
}

}  // namespace tracewright
