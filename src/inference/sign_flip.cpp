#include "inference/sign_flip.hpp"

#include <boost/random/mersenne_twister.hpp>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

namespace tracewright {

namespace {

constexpr std::size_t enumerate_up_to = 20;
constexpr std::uint64_t draws = 99'999;

// What sums of these values can be off by.
double slack_of(std::span<const double> d) {
    double size = 0;
    for (const double value : d) {
        size += std::abs(value);
    }
    return size * 1e-12;
}

// In the order of a Gray code, so that each pattern is one step from the last.
SignFlip enumerated(std::span<const double> d) {
    SignFlip result;
    const double observed = std::accumulate(d.begin(), d.end(), 0.0);
    const double slack = slack_of(d);
    const double far = std::abs(observed) - slack;
    std::vector<double> twice(d.begin(), d.end());
    double sum = observed;
    result.patterns = std::uint64_t{1} << d.size();
    for (std::uint64_t i = 0; i < result.patterns; ++i) {
        if (i > 0) {
            double& value = twice[static_cast<std::size_t>(std::countr_zero(i))];
            sum -= 2 * value;
            value = -value;
        }
        result.at_least += std::abs(sum) >= far ? 1U : 0U;
        result.upper += sum >= observed - slack ? 1U : 0U;
    }
    result.p = static_cast<double>(result.at_least) / static_cast<double>(result.patterns);
    return result;
}

SignFlip drawn(std::span<const double> d, std::uint64_t seed) {
    SignFlip result;
    result.enumerated = false;
    const double far = std::abs(std::accumulate(d.begin(), d.end(), 0.0)) - slack_of(d);
    boost::random::mt19937_64 engine(seed);
    std::uint64_t count = 0;
    for (std::uint64_t draw = 0; draw < draws; ++draw) {
        double sum = 0;
        std::uint64_t bits = 0;
        for (std::size_t i = 0; i < d.size(); ++i) {
            if (i % 64 == 0) {
                bits = engine();
            }
            sum += (bits & 1U) != 0 ? d[i] : -d[i];
            bits >>= 1U;
        }
        count += std::abs(sum) >= far ? 1U : 0U;
    }
    result.at_least = count + 1;
    result.patterns = draws + 1;
    result.p = static_cast<double>(result.at_least) / static_cast<double>(result.patterns);
    return result;
}

}  // namespace

SignFlip sign_flip(std::span<const double> differences, std::uint64_t seed) {
    if (differences.empty()) {
        return {};
    }
    SignFlip result =
        differences.size() <= enumerate_up_to ? enumerated(differences) : drawn(differences, seed);
    result.mean = std::accumulate(differences.begin(), differences.end(), 0.0) /
                  static_cast<double>(differences.size());
    return result;
}

std::optional<std::array<double, 2>> sign_flip_interval(std::span<const double> differences,
                                                        double level, std::uint64_t seed) {
    const int pairs = static_cast<int>(differences.size());
    if (pairs == 0 || smallest_sign_flip_p(pairs) > 1 - level) {
        return std::nullopt;
    }
    const auto [low, high] = std::minmax_element(differences.begin(), differences.end());
    const double mean = std::accumulate(differences.begin(), differences.end(), 0.0) / pairs;
    const auto kept = [&](double centre) {
        std::vector<double> moved(differences.begin(), differences.end());
        for (double& value : moved) {
            value -= centre;
        }
        return sign_flip(moved, seed).p > 1 - level;
    };
    // Beyond the smallest and the largest difference the test always rejects; between them and the
    // mean there is one change of verdict.
    const auto edge = [&](double outside) {
        double inside = mean;
        for (int step = 0; step < 40; ++step) {
            const double middle = (inside + outside) / 2;
            (kept(middle) ? inside : outside) = middle;
        }
        return (inside + outside) / 2;
    };
    return std::array{edge(*low), edge(*high)};
}

double smallest_sign_flip_p(int pairs) {
    return std::ldexp(2.0, -pairs);
}

}  // namespace tracewright
