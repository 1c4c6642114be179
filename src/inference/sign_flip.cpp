#include "inference/sign_flip.hpp"

#include <boost/random/mersenne_twister.hpp>

#include <algorithm>
#include <array>
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

// The sums of all patterns of signs, ascending: those with the next value taken off and those with
// it added are ascending each, so they merge.
std::vector<double> sums_of_patterns(std::span<const double> d) {
    std::vector<double> sums{0.0};
    std::vector<double> longer;
    for (const double value : d) {
        const double size = std::abs(value);
        longer.resize(2 * sums.size());
        std::size_t down = 0;
        std::size_t up = 0;
        for (double& next : longer) {
            const bool lower =
                up == sums.size() || (down < sums.size() && sums[down] - size <= sums[up] + size);
            next = lower ? sums[down++] - size : sums[up++] + size;
        }
        sums.swap(longer);
    }
    return sums;
}

// How many pairs of one from each add up to `least` or more. Both ascending.
std::uint64_t pairs_at_least(const std::vector<double>& a, const std::vector<double>& b,
                             double least) {
    std::uint64_t count = 0;
    std::size_t below = b.size();
    for (const double value : a) {
        while (below > 0 && value + b[below - 1] >= least) {
            --below;
        }
        count += b.size() - below;
    }
    return count;
}

// A pattern is one of the first half with one of the second: 2^(n/2) sums tell of all 2^n.
SignFlip enumerated(std::span<const double> d) {
    SignFlip result;
    const double observed = std::accumulate(d.begin(), d.end(), 0.0);
    const double slack = slack_of(d);
    const double far = std::abs(observed) - slack;
    const std::size_t half = d.size() / 2;
    const auto first = sums_of_patterns(d.first(half));
    const auto second = sums_of_patterns(d.subspan(half));
    result.patterns = std::uint64_t{1} << d.size();
    result.upper = pairs_at_least(first, second, observed - slack);
    // Every pattern has its mirror image, so as many lie as far below.
    result.at_least = far > 0 ? 2 * pairs_at_least(first, second, far) : result.patterns;
    result.p = static_cast<double>(result.at_least) / static_cast<double>(result.patterns);
    return result;
}

// The sums of eight neighbours (the last may be fewer) by the byte that tells their signs.
using ByteOfSigns = std::array<double, 256>;

std::vector<ByteOfSigns> bytes_of_signs(std::span<const double> d) {
    std::vector<ByteOfSigns> tables;
    for (std::size_t from = 0; from < d.size(); from += 8) {
        const auto eight = d.subspan(from, std::min<std::size_t>(8, d.size() - from));
        ByteOfSigns& table = tables.emplace_back();
        for (std::size_t byte = 0; byte < table.size(); ++byte) {
            for (std::size_t i = 0; i < eight.size(); ++i) {
                table[byte] += (byte >> i & 1U) != 0 ? eight[i] : -eight[i];
            }
        }
    }
    return tables;
}

SignFlip drawn(std::span<const double> d, std::uint64_t seed) {
    SignFlip result;
    result.enumerated = false;
    const double far = std::abs(std::accumulate(d.begin(), d.end(), 0.0)) - slack_of(d);
    const std::vector<ByteOfSigns> tables = bytes_of_signs(d);
    boost::random::mt19937_64 engine(seed);
    std::uint64_t count = 0;
    for (std::uint64_t draw = 0; draw < draws; ++draw) {
        double sum = 0;
        std::uint64_t bits = 0;
        for (std::size_t t = 0; t < tables.size(); ++t) {
            bits = t % 8 == 0 ? engine() : bits >> 8U;
            sum += tables[t][bits & 255U];
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
