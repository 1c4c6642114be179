#include "inference/block_randomisation.hpp"

#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr std::size_t enumerate_up_to = 20;
constexpr std::uint64_t draws = 99'999;

double sum_of(std::span<const double> d) {
    return std::accumulate(d.begin(), d.end(), 0.0);
}

void shuffle(std::vector<bool>& order, boost::random::mt19937_64& engine) {
    for (std::size_t i = order.size() - 1; i > 0; --i) {
        const std::size_t j = boost::random::uniform_int_distribution<std::size_t>(0, i)(engine);
        const bool moved = order[i];
        order[i] = order[j];
        order[j] = moved;
    }
}

// Every balanced order, or seeded draws with the observed one first: visit(sum of the differences
// that keep their sign, how many keep it).
template <typename Visit>
void for_each_order(std::span<const double> d, const std::vector<bool>& a_first, std::uint64_t seed,
                    Visit visit) {
    const std::size_t n = d.size();
    const auto first = std::count(a_first.begin(), a_first.end(), true);
    const auto tell = [&](auto a_first_there) {
        double kept = 0;
        int count = 0;
        for (std::size_t i = 0; i < n; ++i) {
            const bool same = a_first_there(i) == a_first[i];
            kept += same ? d[i] : 0;
            count += same ? 1 : 0;
        }
        visit(kept, count);
    };
    if (n <= enumerate_up_to) {
        for (std::uint64_t order = 0; order < std::uint64_t{1} << n; ++order) {
            if (std::popcount(order) == first) {
                tell([&](std::size_t i) { return (order >> i & 1U) != 0; });
            }
        }
        return;
    }
    tell([&](std::size_t i) { return static_cast<bool>(a_first[i]); });
    boost::random::mt19937_64 engine(seed);
    std::vector<bool> order = a_first;
    for (std::uint64_t draw = 0; draw < draws; ++draw) {
        shuffle(order, engine);
        tell([&](std::size_t i) { return static_cast<bool>(order[i]); });
    }
}

SignFlip balanced_test(std::span<const double> d, const std::vector<bool>& a_first,
                       std::uint64_t seed) {
    SignFlip result;
    const double observed = sum_of(d);
    double size = 0;
    for (const double value : d) {
        size += std::abs(value);
    }
    const double slack = size * 1e-12;
    result.enumerated = d.size() <= enumerate_up_to;
    for_each_order(d, a_first, seed, [&](double kept, int) {
        const double sum = 2 * kept - observed;
        ++result.patterns;
        result.at_least += std::abs(sum) >= std::abs(observed) - slack ? 1U : 0U;
        result.upper += result.enumerated && sum >= observed - slack ? 1U : 0U;
    });
    result.p = static_cast<double>(result.at_least) / static_cast<double>(result.patterns);
    result.mean = observed / static_cast<double>(d.size());
    return result;
}

// Below the mean an order's sum of (difference - d) is as far out as the observed where the mean of
// what it flips, or of what it keeps, is d or less; above the mean, d or more. So the ends are
// order statistics of those means.
std::optional<std::array<double, 2>> balanced_interval(std::span<const double> d,
                                                       const std::vector<bool>& a_first,
                                                       std::uint64_t seed, double alpha) {
    const int n = static_cast<int>(d.size());
    const double all = sum_of(d);
    std::vector<double> means;
    std::size_t orders = 0;
    std::size_t always = 0;  // count whatever d is: the draw itself, its mirror image if possible
    for_each_order(d, a_first, seed, [&](double kept, int count) {
        ++orders;
        if (count == 0 || count == n) {
            ++always;
            means.push_back(all / n);
        } else {
            means.push_back(kept / count);
            means.push_back((all - kept) / (n - count));
        }
    });
    const auto allowed =
        static_cast<std::size_t>(std::floor(alpha * static_cast<double>(orders) + 1e-9));
    if (allowed < always) {
        return std::nullopt;
    }
    const std::size_t place = allowed - always;
    const auto at = [&](std::size_t where) {
        std::nth_element(means.begin(), means.begin() + static_cast<std::ptrdiff_t>(where),
                         means.end());
        return means[where];
    };
    return std::array{at(place), at(means.size() - 1 - place)};
}

}  // namespace

BlockRandomisation block_randomisation(std::span<const double> differences,
                                       const std::vector<bool>& a_first, Draw draw,
                                       std::uint64_t seed) {
    if (a_first.size() != differences.size()) {
        throw std::invalid_argument("the order drawn does not fit the differences");
    }
    if (differences.empty()) {
        return {};
    }
    if (draw == Draw::fair_coins) {
        return {sign_flip(differences, seed), sign_flip_interval(differences, 0.95, seed)};
    }
    return {balanced_test(differences, a_first, seed),
            balanced_interval(differences, a_first, seed, 0.05)};
}

double smallest_block_p(int blocks, Draw draw) {
    if (draw == Draw::fair_coins) {
        return smallest_sign_flip_p(blocks);
    }
    double orders = 1;
    const int half = blocks / 2;
    for (int i = 1; i <= half; ++i) {
        orders *= static_cast<double>(half + i) / i;
    }
    return std::min(1.0, 2 / orders);
}

std::vector<bool> drawn_order(int blocks, Draw draw, std::uint64_t seed) {
    boost::random::mt19937_64 engine(seed);
    std::vector<bool> order(static_cast<std::size_t>(std::max(0, blocks)));
    if (draw == Draw::fair_coins) {
        boost::random::uniform_int_distribution<int> coin(0, 1);
        for (std::size_t i = 0; i < order.size(); ++i) {
            order[i] = coin(engine) == 1;
        }
        return order;
    }
    if (blocks % 2 != 0) {
        throw std::invalid_argument("a balanced draw needs an even number of blocks");
    }
    std::fill(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(order.size() / 2), true);
    if (!order.empty()) {
        shuffle(order, engine);
    }
    return order;
}

}  // namespace tracewright
