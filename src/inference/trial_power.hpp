#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// Power of the two-sided paired t test: `pairs` >= 2 differences of SD `sd` about `effect`. The
/// far tail is not counted. Source: noncentral t distribution.
double paired_t_power(int pairs, double effect, double sd, double alpha = 0.05);

/// The same for two groups of `each` >= 2.
double two_sample_t_power(int each, double effect, double sd, double alpha = 0.05);

/// Up to this many blocks the sign-flip test itself is run on simulated trials; beyond, the closed
/// form of the paired t test stands in.
inline constexpr int most_blocks_simulated = 12;

/// Power of the exact sign-flip test by simulation: in each of `draws` trials `blocks` differences
/// are taken from `noise` at random with a random sign, `effect` is added, and the test is run.
/// `noise`: block differences of someone's own without any effect, in any order. 0 without noise,
/// or where so few blocks can't reach alpha.
double sign_flip_power(std::span<const double> noise, double effect, int blocks, std::uint64_t seed,
                       double alpha = 0.05, int draws = 1000);

/// One row of a plan: so many blocks, and the chance of seeing the effect.
struct BlocksPower {
    int blocks = 0;
    double power = 0;
    bool simulated = false;  ///< else the closed form
    double smallest_p = 0;   ///< that so many blocks can give
};

struct TrialLength {
    double noise_sd = 0;  ///< of a block difference about 0
    /// From 6 blocks, in steps of one up to 12, then by the closed form, until the wanted power is
    /// reached or `most` passed.
    std::vector<BlocksPower> rows;
    std::optional<int> blocks;  ///< fewest with the wanted power; empty: none up to `most`
};

/// How many blocks a trial needs for an effect, from the noise of this person's own blocks.
/// Method: docs/methods/trials.md. Sources: CENT 2015, 10.1136/bmj.h1738 (design); noncentral t.
TrialLength trial_length(std::span<const double> noise, double effect, std::uint64_t seed,
                         double wanted = 0.8, int most = 60);

/// Where the true spread lies with a chance of `level`, seen as `sd` with so many degrees of
/// freedom (chi-squared; at least one).
std::array<double, 2> spread_bounds(double sd, int dof, double level);

}  // namespace tracewright
