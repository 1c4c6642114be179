#include "inference/survival.hpp"

#include <boost/math/distributions/chi_squared.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr double normal_quantile = 1.959963984540054;

// Two groups at one time at which something failed.
struct AtTime {
    double time = 0;
    std::array<double, 2> at_risk{};
    std::array<double, 2> failed{};

    double risk() const { return at_risk[0] + at_risk[1]; }
    double failures() const { return failed[0] + failed[1]; }
};

std::vector<AtTime> times_of(std::span<const Lifetime> lifetimes) {
    std::vector<Lifetime> sorted(lifetimes.begin(), lifetimes.end());
    std::sort(sorted.begin(), sorted.end(), [](const Lifetime& a, const Lifetime& b) {
        return a.time != b.time ? a.time < b.time : a.failed > b.failed;
    });
    std::array<double, 2> left{};
    for (const Lifetime& one : sorted) {
        left.at(one.group) += 1;
    }
    std::vector<AtTime> times;
    for (std::size_t i = 0; i < sorted.size();) {
        AtTime now{sorted[i].time, left, {}};
        for (; i < sorted.size() && sorted[i].time == now.time; ++i) {
            now.failed.at(sorted[i].group) += sorted[i].failed ? 1 : 0;
            left.at(sorted[i].group) -= 1;
        }
        if (now.failures() > 0) {
            times.push_back(now);
        }
    }
    return times;
}

std::vector<Lifetime> as_one_group(std::span<const Lifetime> lifetimes) {
    std::vector<Lifetime> all(lifetimes.begin(), lifetimes.end());
    for (Lifetime& one : all) {
        one.group = 0;
    }
    return all;
}

void check_groups(std::span<const Lifetime> lifetimes) {
    for (const Lifetime& one : lifetimes) {
        if (one.group > 1) {
            throw std::invalid_argument("two groups are compared: 0 and 1");
        }
    }
}

// Where a step curve first comes to a half or below; exactly a half runs to the middle of the flat.
std::optional<double> crossing(const std::vector<SurvivalStep>& steps,
                               double (*value)(const SurvivalStep&)) {
    constexpr double half = 0.5;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const double share = value(steps[i]);
        if (std::abs(share - half) < 1e-12 && i + 1 < steps.size()) {
            return (steps[i].time + steps[i + 1].time) / 2;
        }
        if (share < half) {
            return steps[i].time;
        }
    }
    return std::nullopt;
}

}  // namespace

double Survival::share_after(double time) const {
    double share = 1;
    for (const SurvivalStep& step : steps) {
        if (step.time <= time) {
            share = step.share;
        }
    }
    return share;
}

Survival survival(std::span<const Lifetime> lifetimes) {
    Survival result;
    result.count = static_cast<int>(lifetimes.size());
    double share = 1;
    double variance = 0;  // of log share
    for (const AtTime& now : times_of(as_one_group(lifetimes))) {
        SurvivalStep step;
        step.time = now.time;
        step.at_risk = static_cast<int>(now.risk());
        step.failed = static_cast<int>(now.failures());
        result.failures += step.failed;
        share *= 1 - now.failures() / now.risk();
        variance += now.failures() / (now.risk() * (now.risk() - now.failures()));
        step.share = share;
        if (share > 0) {
            step.standard_error = share * std::sqrt(variance);
            const double wide = normal_quantile * std::sqrt(variance);
            step.interval95 = {share * std::exp(-wide), std::min(1.0, share * std::exp(wide))};
        }
        result.steps.push_back(step);
    }
    result.median = crossing(result.steps, [](const SurvivalStep& step) { return step.share; });
    result.median95[0] =
        crossing(result.steps, [](const SurvivalStep& step) { return step.interval95[0]; });
    result.median95[1] =
        crossing(result.steps, [](const SurvivalStep& step) { return step.interval95[1]; });
    return result;
}

LogRank log_rank(std::span<const Lifetime> lifetimes, bool early) {
    check_groups(lifetimes);
    LogRank result{{0, 0}, {0, 0}, 0, 1};
    double apart = 0;
    double variance = 0;
    double share = 1;  // of all, before the time at hand
    for (const AtTime& now : times_of(lifetimes)) {
        const double n = now.risk();
        const double d = now.failures();
        const double weight = early ? share : 1;
        for (std::size_t group = 0; group < 2; ++group) {
            result.observed[group] += weight * now.failed[group];
            result.expected[group] += weight * d * now.at_risk[group] / n;
        }
        apart += weight * (now.failed[0] - d * now.at_risk[0] / n);
        if (n > 1) {
            variance += weight * weight * d * (now.at_risk[0] / n) * (now.at_risk[1] / n) *
                        (n - d) / (n - 1);
        }
        share *= 1 - d / n;
    }
    if (variance > 0) {
        result.chi_squared = apart * apart / variance;
        result.p = boost::math::cdf(
            boost::math::complement(boost::math::chi_squared(1), result.chi_squared));
    }
    return result;
}

std::optional<HazardRatio> hazard_ratio(std::span<const Lifetime> lifetimes, Ties ties) {
    check_groups(lifetimes);
    const std::vector<AtTime> times = times_of(lifetimes);
    std::array<double, 2> failures{};
    for (const AtTime& now : times) {
        failures[0] += now.failed[0];
        failures[1] += now.failed[1];
    }
    if (failures[0] == 0 || failures[1] == 0) {
        return std::nullopt;
    }
    double b = 0;
    double information = 0;
    for (int step = 0; step < 50; ++step) {
        double slope = 0;
        information = 0;
        const double r = std::exp(b);
        for (const AtTime& now : times) {
            slope += now.failed[1];
            const auto d = static_cast<int>(now.failures());
            for (int i = 0; i < d; ++i) {
                // Efron: of those that fail together a part has gone by then.
                const double gone = ties == Ties::efron ? static_cast<double>(i) / d : 0;
                const double one = r * (now.at_risk[1] - gone * now.failed[1]);
                const double zero = now.at_risk[0] - gone * now.failed[0];
                const double share = one / (one + zero);
                slope -= share;
                information += share * (1 - share);
            }
        }
        if (!(information > 0)) {
            return std::nullopt;
        }
        const double move = slope / information;
        b += move;
        if (std::abs(move) < 1e-12) {
            break;
        }
    }
    return HazardRatio{b, 1 / std::sqrt(information)};
}

}  // namespace tracewright
