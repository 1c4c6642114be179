#include "findings/question_words.hpp"

#include "measures/sensor_error.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

// 5.4 mg/dL is 0.3 mmol/L. Glucose after fasting wanders by 0.42 mmol/L from day to day even
// without diabetes (10.1038/s41591-024-02908-9): less than 0.3 is nothing to act on. Ours; --worth
// sets another.
constexpr double glucose_worth = 5.4;

constexpr std::array outcomes = {
    OutcomeFacts{Outcome::fasting, "fasting", "fasting glucose",
                 "median of the last hour before waking, the first food or the first movement, at "
                 "least 6 h after the last food",
                 OutcomeOf::night, OutcomeUnit::glucose, glucose_worth, std::nullopt},
    OutcomeFacts{Outcome::overnight, "overnight", "overnight glucose",
                 "mean from falling asleep to waking where noted, else 00:00 to 06:00",
                 OutcomeOf::night, OutcomeUnit::glucose, glucose_worth, std::nullopt},
    OutcomeFacts{Outcome::dawn_rise, "dawn-rise", "the dawn rise",
                 "before breakfast less the lowest between 00:00 and 06:00, medians of five "
                 "readings; not after a low or food in the night",
                 OutcomeOf::night, OutcomeUnit::glucose, glucose_worth, std::nullopt},
    OutcomeFacts{Outcome::breakfast_rise, "breakfast", "the rise after breakfast",
                 "mean height above the start over three hours", OutcomeOf::meal,
                 OutcomeUnit::glucose, glucose_worth, MealSlot::breakfast},
    OutcomeFacts{Outcome::lunch_rise, "lunch", "the rise after lunch",
                 "mean height above the start over three hours", OutcomeOf::meal,
                 OutcomeUnit::glucose, glucose_worth, MealSlot::lunch},
    OutcomeFacts{Outcome::dinner_rise, "dinner", "the rise after dinner",
                 "mean height above the start over three hours", OutcomeOf::meal,
                 OutcomeUnit::glucose, glucose_worth, MealSlot::dinner},
    OutcomeFacts{Outcome::day_mean, "day-mean", "the day's mean glucose", "midnight to midnight",
                 OutcomeOf::day, OutcomeUnit::glucose, glucose_worth, std::nullopt},
    OutcomeFacts{Outcome::hours_in_range, "in-range", "hours in range a day",
                 "70 to 180 mg/dL (3.9 to 10.0 mmol/L)", OutcomeOf::day, OutcomeUnit::hours, 1,
                 std::nullopt},
    OutcomeFacts{Outcome::hours_high, "high", "hours high a day", "above 180 mg/dL (10.0 mmol/L)",
                 OutcomeOf::day, OutcomeUnit::hours, 1, std::nullopt},
    OutcomeFacts{Outcome::hours_low, "low", "hours low a day", "below 70 mg/dL (3.9 mmol/L)",
                 OutcomeOf::day, OutcomeUnit::hours, 0.25, std::nullopt},
    OutcomeFacts{Outcome::spread, "spread", "the day's spread",
                 "standard deviation of the day's readings", OutcomeOf::day, OutcomeUnit::glucose,
                 glucose_worth, std::nullopt},
};

constexpr std::array causes = {
    CauseFacts{Cause::sleep, "sleep", "hours slept", "the night that ends on this morning",
               "two hours less sleep", -2, "h", false, "sleep"},
    CauseFacts{Cause::bedtime, "bedtime", "bedtime", "when sleep began, where it was written",
               "going to bed two hours later", 2, "h", false, "when sleep began"},
    CauseFacts{Cause::dinner_time, "dinner-time", "the hour of dinner", "its first entry",
               "dinner three hours later", 3, "h", false, "dinner with its time"},
    CauseFacts{Cause::last_meal_to_bed, "last-meal-to-bed", "hours from the last food to bed",
               "last eating entry to the beginning of sleep",
               "two hours less between the last food and bed", -2, "h", false,
               "sleep and the last food"},
    CauseFacts{Cause::dinner_carbohydrate, "dinner-carbs", "carbohydrate at dinner", "as noted",
               "50 g more carbohydrate at dinner", 50, "g", false, "dinner with its carbohydrate"},
    CauseFacts{Cause::dinner_energy, "dinner-energy", "energy at dinner", "as noted",
               "400 kcal more at dinner", 400, "kcal", false, "dinner with its energy"},
    CauseFacts{Cause::meal_carbohydrate, "carbs", "carbohydrate of the meal", "as noted",
               "30 g more carbohydrate", 30, "g", false, "the meal with its carbohydrate"},
    CauseFacts{Cause::day_carbohydrate, "day-carbs", "carbohydrate of the day",
               "the sum of what is noted", "100 g more carbohydrate in the day", 100, "g", false,
               "all meals with their carbohydrate"},
    CauseFacts{Cause::movement, "movement", "minutes of movement",
               "the day before a night, the same day for a day; no entry is read as none",
               "30 minutes more movement", 30, "min", false, "movement"},
    CauseFacts{Cause::walk_after, "walk-after", "movement within 90 minutes after the meal",
               "any entry of movement; no entry is read as none", "movement after the meal", 1, "",
               true, "movement"},
    CauseFacts{Cause::alcohol, "alcohol", "alcohol",
               "any entry of the evening before, or of the day; no entry is read as none",
               "alcohol", 1, "", true, "alcohol"},
    CauseFacts{Cause::stress, "stress", "a tense day",
               "a mood entry that tells of tension, stress or worry; days without one are left out",
               "a tense day", 1, "", true, "mood"},
    CauseFacts{Cause::weekend, "weekend", "the weekend", "Saturday and Sunday", "the weekend", 1,
               "", true, ""},
    CauseFacts{Cause::travel, "travel", "a day of travel", "a change of zone on that day",
               "a day of travel", 1, "", true, ""},
    CauseFacts{Cause::meal_energy, "meal-energy", "energy of the meal", "as noted",
               "200 kcal more in the meal", 200, "kcal", false, "the meal with its energy"},
    CauseFacts{Cause::meal_order, "meal-order", "the order within the meal",
               "'salad first', 'bread last' and the like; meals whose text tells no order are left "
               "out",
               "vegetables or protein before the starch", 1, "", true,
               "what was eaten first and last"},
    CauseFacts{Cause::strength, "strength", "strength training",
               "movement that tells of weights, resistance or the gym, the day before a night, the "
               "same day for a day; no entry is read as none",
               "strength training", 1, "", true, "the kind of movement"},
    CauseFacts{Cause::work_shift, "shift", "a work shift outside the day",
               "an entry that tells of a night, late or early shift; no entry is read as none",
               "a shift outside the day", 1, "", true, "shifts"},
    CauseFacts{Cause::cycle, "cycle", "the half of the cycle",
               "counted from 'cycle day 3' or 'period began'; days more than 35 after the last one "
               "are left out",
               "the second half of the cycle (from day 15)", 1, "", true,
               "the first day of each period"},
    CauseFacts{Cause::walk_before, "walk-before", "movement within 90 minutes before the meal",
               "any entry of movement; no entry is read as none", "movement before the meal", 1, "",
               true, "movement"},
    CauseFacts{Cause::carbohydrate_before, "carbs-day-before", "carbohydrate of the day before",
               "the sum of what is noted", "100 g more carbohydrate on the day before", 100, "g",
               false, "all meals with their carbohydrate"},
};

}  // namespace

std::span<const OutcomeFacts> all_outcomes() {
    return outcomes;
}

std::span<const CauseFacts> all_causes() {
    return causes;
}

const OutcomeFacts& facts_of(Outcome outcome) {
    return outcomes.at(static_cast<std::size_t>(outcome));
}

const CauseFacts& facts_of(Cause cause) {
    return causes.at(static_cast<std::size_t>(cause));
}

std::optional<Outcome> outcome_called(std::string_view code) {
    const auto found = std::find_if(outcomes.begin(), outcomes.end(),
                                    [&](const OutcomeFacts& facts) { return facts.code == code; });
    return found == outcomes.end() ? std::nullopt : std::optional(found->outcome);
}

std::optional<Cause> cause_called(std::string_view code) {
    const auto found = std::find_if(causes.begin(), causes.end(),
                                    [&](const CauseFacts& facts) { return facts.code == code; });
    return found == causes.end() ? std::nullopt : std::optional(found->cause);
}

ValueError value_error_of(OutcomeUnit unit) {
    return unit == OutcomeUnit::glucose ? ValueError{1, one_sensors_error} : ValueError{0.25, 0};
}

bool can_be_asked(Outcome outcome, Cause cause) {
    const OutcomeFacts& facts = facts_of(outcome);
    switch (cause) {
        case Cause::meal_carbohydrate:
        case Cause::walk_after:
        case Cause::walk_before:
        case Cause::meal_energy:
        case Cause::meal_order:
            return facts.of == OutcomeOf::meal;
        case Cause::dinner_time:
        case Cause::dinner_carbohydrate:
        case Cause::dinner_energy:
            // Of a night it is the dinner before; of a day or a breakfast too; not of dinner
            // itself.
            return outcome != Outcome::dinner_rise;
        case Cause::day_carbohydrate:
            return facts.of == OutcomeOf::day;
        default:
            return true;
    }
}

}  // namespace tracewright
