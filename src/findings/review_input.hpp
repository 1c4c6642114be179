#pragma once

#include "diary/diary_entry.hpp"
#include "measures/goals.hpp"
#include "time/zone_history.hpp"
#include "trace/suspect.hpp"
#include "trace/wear.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What a review reads of one client: straight from files, or with what a practice knows.
struct ReviewInput {
    std::string of_whom;  ///< the client's name as papers bear it; empty: from files alone
    std::vector<Wear> wears;
    Diary diary;
    ZoneHistory zones{Zone::floating()};
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;  ///< to show
    std::optional<Interval> window;             ///< empty: all there is
    Goals goals = consensus_goals(GoalKind::adults);
    SuspectRules suspect;
    std::optional<std::size_t> prefer_wear;  ///< of two at once, by index into wears
    Instant as_of;                           ///< 'now': decides how old the last reading is
    std::uint64_t seed = 1;
    /// Neither foods nor grams are told: the eating screen is positive or not answered (safety
    /// rule 12).
    bool foods_left_off = false;
    /// Rows of its files that bore a level which could not be read: nothing of them is counted.
    std::uint64_t levels_not_read = 0;
};

}  // namespace tracewright
