#pragma once

#include "coaching/care_input.hpp"
#include "coaching/gaps_without_food.hpp"

#include <functional>
#include <optional>
#include <string>

namespace tracewright {

/// Little carbohydrate or long gaps without food, as the diary has them (safety rule 8). A diary
/// leaves things out: sentences ask.
struct RestrictedEating {
    /// The lowest mean of three days running, where it is below 130 g. Only days with three meals
    /// or more, all with their grams, are read: less is a diary, not a diet.
    struct LittleCarbohydrate {
        CivilDate from;
        double grams_a_day = 0;
    };
    /// The longest of the gaps without food. Days without any entry are left to the question of how
    /// complete the diary is.
    struct LongGap {
        GapWithoutFood gap;
        int count = 0;  ///< of such gaps
    };
    std::optional<LittleCarbohydrate> little_carbohydrate;
    std::optional<LongGap> long_gap;
};

/// Of days or gaps that `concerns` leaves in; empty: of all.
RestrictedEating restricted_eating(const CareInput& input,
                                   const std::function<bool(Interval)>& concerns = {});

/// For the coach of a client on an SGLT2 inhibitor (or who may be, or whose type is uncertain),
/// until the prescriber has answered: what was seen on days on which it was taken or may have been,
/// and what to do. Empty where nothing of it was seen, or where it is answered.
struct RestrictedEatingToTell {
    std::string seen;
    std::string next;
    Instant from;
};
std::optional<RestrictedEatingToTell> restricted_eating_to_tell(const CareInput& input);

/// The same as one text; empty without it.
std::string restricted_eating_for_coach(const CareInput& input);

/// The handout's line for who may take an SGLT2 inhibitor; empty for the others.
std::string sick_day_line(const CareInput& input);

}  // namespace tracewright
