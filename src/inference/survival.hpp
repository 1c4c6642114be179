#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// How long one thing lasted, and whether that was its failure or only the end of looking.
struct Lifetime {
    double time = 0;
    bool failed = false;
    std::size_t group = 0;  ///< for comparing: 0, 1, ...
};

/// The share still working after each time at which something failed.
struct SurvivalStep {
    double time = 0;
    int at_risk = 0;
    int failed = 0;
    double share = 1;
    double standard_error = 0;           ///< Greenwood
    std::array<double, 2> interval95{};  ///< on the log scale, kept within 0 and 1
};

struct Survival {
    std::vector<SurvivalStep> steps;  ///< ascending
    int count = 0;
    int failures = 0;
    std::optional<double> median;  ///< empty: not reached
    /// Brookmeyer & Crowley 1982: where the interval of the share crosses a half. Each end empty
    /// where it doesn't.
    std::array<std::optional<double>, 2> median95{};

    /// Share still working just after `time`; 1 before the first failure.
    double share_after(double time) const;
};

/// Kaplan & Meier 1958, 10.1080/01621459.1958.10501452. A failure at the moment of an end of
/// looking comes first. Empty input: no steps.
Survival survival(std::span<const Lifetime> lifetimes);

/// Whether the groups last alike.
struct LogRank {
    std::vector<double> observed;  ///< failures by group
    std::vector<double> expected;
    double chi_squared = 0;
    double p = 1;
};

/// Log-rank test of two groups (0 and 1); `early` weighs each failure by the share of all still
/// working before it (Peto & Peto 1972, 10.2307/2344317), which looks more at early ones.
/// std::invalid_argument for other groups; p 1 where nothing can be told.
LogRank log_rank(std::span<const Lifetime> lifetimes, bool early = false);

/// The proportional hazards of group 1 against 0 where failures fall together.
enum class Ties { efron, breslow };
struct HazardRatio {
    double log_ratio = 0;
    double standard_error = 0;
};
/// Cox 1972; partial likelihood by Newton's steps. Empty where a group has no failure.
std::optional<HazardRatio> hazard_ratio(std::span<const Lifetime> lifetimes,
                                        Ties ties = Ties::efron);

}  // namespace tracewright
