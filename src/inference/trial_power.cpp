#include "inference/trial_power.hpp"

#include "inference/sign_flip.hpp"
#include "inference/student_t.hpp"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr int fewest_blocks = 6;  // five can't go below 0.0625

double t_power(double dof, double centre, double alpha) {
    const double critical = student_t_quantile(1 - alpha / 2, dof);
    return boost::math::cdf(
        boost::math::complement(boost::math::non_central_t(dof, std::abs(centre)), critical));
}

double root_mean_square(std::span<const double> values) {
    double sum = 0;
    for (const double value : values) {
        sum += value * value;
    }
    return values.empty() ? 0 : std::sqrt(sum / static_cast<double>(values.size()));
}

}  // namespace

double paired_t_power(int pairs, double effect, double sd, double alpha) {
    if (pairs < 2 || !(sd > 0)) {
        throw std::invalid_argument("power needs two pairs and a spread above 0");
    }
    return t_power(pairs - 1, std::sqrt(pairs) * effect / sd, alpha);
}

double two_sample_t_power(int each, double effect, double sd, double alpha) {
    if (each < 2 || !(sd > 0)) {
        throw std::invalid_argument("power needs two in each group and a spread above 0");
    }
    return t_power(2 * each - 2, std::sqrt(each / 2.0) * effect / sd, alpha);
}

double sign_flip_power(std::span<const double> noise, double effect, int blocks, std::uint64_t seed,
                       double alpha, int draws) {
    if (noise.empty() || smallest_sign_flip_p(blocks) > alpha) {
        return 0;
    }
    boost::random::mt19937_64 engine(seed);
    boost::random::uniform_int_distribution<std::size_t> which(0, 2 * noise.size() - 1);
    std::vector<double> differences(static_cast<std::size_t>(blocks));
    int seen = 0;
    for (int draw = 0; draw < draws; ++draw) {
        for (double& difference : differences) {
            const std::size_t at = which(engine);
            difference = effect + (at % 2 == 0 ? noise[at / 2] : -noise[at / 2]);
        }
        seen += sign_flip(differences).p <= alpha ? 1 : 0;
    }
    return static_cast<double>(seen) / draws;
}

TrialLength trial_length(std::span<const double> noise, double effect, std::uint64_t seed,
                         double wanted, int most) {
    TrialLength length;
    length.noise_sd = root_mean_square(noise);
    if (!(length.noise_sd > 0) || effect == 0) {
        return length;
    }
    for (int blocks = fewest_blocks; blocks <= most; ++blocks) {
        BlocksPower row;
        row.blocks = blocks;
        row.smallest_p = smallest_sign_flip_p(blocks);
        row.simulated = blocks <= most_blocks_simulated;
        row.power = row.simulated ? sign_flip_power(noise, effect, blocks,
                                                    seed + static_cast<std::uint64_t>(blocks))
                                  : paired_t_power(blocks, effect, length.noise_sd);
        length.rows.push_back(row);
        if (row.power >= wanted) {
            length.blocks = blocks;
            break;
        }
    }
    return length;
}

std::array<double, 2> spread_bounds(double sd, int dof, double level) {
    const boost::math::chi_squared distribution(std::max(1, dof));
    const auto at = [&](double p) {
        return sd * std::sqrt(std::max(1, dof) / boost::math::quantile(distribution, p));
    };
    return {at((1 + level) / 2), at((1 - level) / 2)};
}

}  // namespace tracewright
