#pragma once

#include "diary/diary_entry.hpp"
#include "time/zone_history.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

enum class MealSlot : std::uint8_t { breakfast, lunch, dinner, snack };
const char* name_of(MealSlot slot);

/// The slot of a wall time: breakfast 04:00 to 10:30, lunch 11:30 to 14:30, dinner 17:30 to 22:30,
/// else a snack. Ours: common practice, no source.
MealSlot slot_of(WallTime at);

/// What was eaten within half an hour of an entry before it: one response, whatever was written
/// apart.
struct EatingOccasion {
    Instant at;    ///< first entry
    Instant last;  ///< last entry
    MealSlot slot = MealSlot::snack;
    std::vector<std::string> foods;        ///< as written, without empty ones
    std::optional<double> carbohydrate_g;  ///< the sum; empty if an entry has none or bases differ
    CarbohydrateBasis carbohydrate_basis = CarbohydrateBasis::not_told;
    bool carbohydrate_estimated =
        false;  ///< at least one entry's is worked out or written with "~"
    std::optional<double> fibre_g;
    std::optional<double> energy_kcal;
    bool not_described = false;
    bool time_uncertain = false;

    /// The foods in one line.
    std::string text() const;
};

/// Occasions in order of time. Entries of alcohol alone are none. A written slot overrides the
/// clock's.
std::vector<EatingOccasion> eating_occasions(const Diary& diary, const ZoneHistory& zones);

/// A food's name for comparing: lower case, runs of spaces one, amounts ("150 g", "2 x") taken out.
std::string food_key(const std::string& written);

}  // namespace tracewright
