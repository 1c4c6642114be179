#pragma once

#include "responses/eating_occasion.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace tracewright {

/// What a question can be about: one value for each night, day or meal.
enum class Outcome : std::uint8_t {
    fasting,
    overnight,
    dawn_rise,
    breakfast_rise,
    lunch_rise,
    dinner_rise,
    day_mean,
    hours_in_range,
    hours_high,
    hours_low,
    spread
};

/// What an outcome may go with. Medicines and illness are never among them: they are adjusters and
/// marks.
enum class Cause : std::uint8_t {
    sleep,
    bedtime,
    dinner_time,
    last_meal_to_bed,
    dinner_carbohydrate,
    dinner_energy,
    meal_carbohydrate,
    day_carbohydrate,
    movement,
    walk_after,
    alcohol,
    stress,
    weekend,
    travel,
    meal_energy,
    meal_order,
    strength,
    work_shift,
    cycle,
    walk_before,
    carbohydrate_before
};

enum class OutcomeOf : std::uint8_t { night, day, meal };
enum class OutcomeUnit : std::uint8_t { glucose, hours };

struct OutcomeFacts {
    Outcome outcome;
    const char* code;   ///< on the command line and in JSON
    const char* words;  ///< "fasting glucose"
    const char* means;  ///< how it is worked out, in one line
    OutcomeOf of;
    OutcomeUnit unit;
    double worth_acting_on;  ///< mg/dL or hours: the smallest difference worth acting on; ours
    std::optional<MealSlot> slot;
};

struct CauseFacts {
    Cause cause;
    const char* code;
    const char* words;   ///< "hours slept"
    const char* means;   ///< how it is read off the diary
    const char* change;  ///< the change whose effect is told: "two hours less sleep"
    double change_size;  ///< in the cause's own unit; signed as `change` says
    const char* unit;    ///< "h", "g", "min", "" for yes and no
    bool yes_no;
    const char* to_note;  ///< what the diary must hold: "sleep"
};

std::span<const OutcomeFacts> all_outcomes();
std::span<const CauseFacts> all_causes();
const OutcomeFacts& facts_of(Outcome outcome);
const CauseFacts& facts_of(Cause cause);
/// By code; empty if there is none of this name.
std::optional<Outcome> outcome_called(std::string_view code);
std::optional<Cause> cause_called(std::string_view code);

/// What a night's, day's or meal's value is measured no better than.
struct ValueError {
    double least_sd;  ///< mg/dL or hours
    double share;     ///< one sensor's SD as a share of every difference it tells
};
/// Glucose: 1 mg/dL, the step in which sensors tell it, and 5 % of a difference, for what a sensor
/// reads high or low throughout. Hours: a quarter, one reading of the sensors that tell seldomest.
/// Ours, no source (docs/methods/questions.md).
ValueError value_error_of(OutcomeUnit unit);

/// Whether a cause can be asked of an outcome (a walk after a meal only of a meal, ...).
bool can_be_asked(Outcome outcome, Cause cause);

}  // namespace tracewright
