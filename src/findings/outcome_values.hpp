#pragma once

#include "findings/question_words.hpp"
#include "findings/review_input.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What one outcome came to, and of which stretch it was made; or why there is none.
struct OutcomeValue {
    std::optional<double> value;
    std::string none_because;
    Interval made_of{};
    std::map<std::string, double> adjusters;
    bool meal_not_noted = false;  ///< the diary holds no meal of the slot
};

/// What the diary says of one civil day and the night before it.
struct DiaryOfDay {
    CivilDay day;
    const DiaryEntry* sleep = nullptr;      ///< the longest that ended between 03:00 and 15:00
    std::vector<const DiaryEntry*> before;  ///< entries from 15:00 of the day before to 04:00
    std::vector<const DiaryEntry*> within;  ///< entries from 04:00 to 04:00 of the next day
};
DiaryOfDay diary_of_day(const Diary& diary, const CivilDay& day, const ZoneHistory& zones);

/// Fasting glucose of the morning (the one definition of the project).
OutcomeValue fasting_glucose(const DiaryOfDay& diary, const Diary& all, const TraceView& trace);
OutcomeValue overnight_glucose(const DiaryOfDay& diary, const TraceView& trace,
                               const ZoneHistory& zones);
OutcomeValue dawn_rise(const DiaryOfDay& diary, const TraceView& trace, const ZoneHistory& zones);
/// Of the day's first readable occasion of a slot. `occasions` are all of the diary's.
OutcomeValue meal_rise(MealSlot slot, const CivilDay& day,
                       std::span<const EatingOccasion> occasions, const TraceView& trace,
                       const ZoneHistory& zones);
OutcomeValue day_value(Outcome outcome, const CivilDay& day, const TraceView& trace,
                       const ZoneHistory& zones);

/// The difference that is a dawn rise, 20 mg/dL or more: Monnier et al. 2013, 10.2337/dc12-2127.
inline constexpr double dawn_rise_from = 20;
inline bool is_dawn_rise(double mg_per_dl) {
    return mg_per_dl >= dawn_rise_from;
}

}  // namespace tracewright
