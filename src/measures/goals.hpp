#pragma once

#include <optional>
#include <string_view>

namespace tracewright {

enum class GoalKind { adults, older_or_high_risk, own, pregnancy };

/// What share of the day a person aims at, in percent of sensed time. A limit that is not set has
/// no published or agreed figure. All are strict: exactly 70.0 % misses "more than 70 %"; unrounded
/// values are compared.
struct Goals {
    GoalKind kind = GoalKind::adults;
    std::optional<double> in_range_above;
    std::optional<double> below_range_below;  ///< low and very low together
    std::optional<double> very_low_below;
    std::optional<double> above_range_below;  ///< high and very high together
    std::optional<double> very_high_below;
};

/// The consensus goals. Sources: Battelino et al. 2019, Diabetes Care 42:1593, 10.2337/dci19-0028;
/// the limit of 50 % above range for older people is from memory. Pregnancy has no goals here: its
/// clinic leads (safety rule 11). `own` comes back without limits, for the coach to fill.
Goals consensus_goals(GoalKind kind);

/// "adults with type 1 or type 2 diabetes", "older or high-risk adults", ...
std::string_view name_of(GoalKind kind);

}  // namespace tracewright
