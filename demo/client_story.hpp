#pragma once

#include "file_dialect.hpp"
#include "sensor.hpp"
#include "time/instant.hpp"

#include <chrono>
#include <string>
#include <vector>

namespace tracewright {

/// The practice's sixteen weeks: Monday 29 December 2025 to Sunday 19 April 2026, and its own
/// 'today', the Monday after at 09:00 in Berlin. Europe's clocks go forward on 29 March.
inline constexpr CivilDate first_story_day{std::chrono::local_days{std::chrono::year_month_day{
    std::chrono::year{2025}, std::chrono::December, std::chrono::day{29}}}};
inline constexpr int story_days = 113;
inline constexpr WallTime story_today =
    first_story_day + std::chrono::days{112} + std::chrono::hours{9};

/// What can be on a plate. `rise` is how many grams of glucose the body meets for each gram that
/// is written down: 1, but for a food that is planted as one with a high rise.
struct Food {
    std::string name;
    double carbohydrate_g = 0;
    double rise = 1;
};

enum class Slot { breakfast, lunch, snack, dinner };
const char* words_for(Slot slot);

/// What a client does from day to day, before anything follows from it.
struct Routine {
    double wake_hour = 6.75;
    double slept_hours = 7.4;        ///< on an ordinary night
    double short_slept_hours = 5.4;  ///< on a short one
    double short_night_chance = 0.1;
    double dinner_hour = 18.75;
    double late_dinner_hour = 21.5;
    double late_dinner_chance = 0;
    /// Not 0: dinner hour and sleep vary together, night by night, with this correlation of late
    /// with short; the chances above are then not used.
    double late_with_short = 0;
    double walk_after_dinner_chance = 0.2;
    double snack_chance = 0.35;
    double appetite = 1;              ///< of every plate
    double portion_deviation = 0.25;  ///< relative
};

/// The planted truths of a body: how far each habit moves a parameter of the meal model. All
/// invented. 0 and 1: no effect.
struct PlantedEffects {
    double production_per_hour_short = 0;  ///< of kp1 at night, for each hour of sleep below 7
    double uptake_per_hour_short = 0;      ///< of Vmx the next day, likewise, downward
    double production_per_hour_late = 0;   ///< of kp1 at night, for each hour of dinner after 19:00
    double uptake_after_walk = 1;          ///< Vmx times this for two hours from the walk's start
};

/// A change of the body's resting level from a day on (a medicine, a slow improvement).
struct LevelSince {
    int day = 0;
    double basal_mg_per_dl = 0;
};

/// A night in which production falls away from a clock time on: a low is planted.
struct PlannedLow {
    int day = 0;  ///< of the morning
    double from_hour = 1;
    double hours = 2;
    double production = 0.4;      ///< of kp1
    double floor_mg_per_dl = 49;  ///< below it the body answers: production is itself again
};

/// A meal that is eaten at a set time whatever the routine says; perhaps never written down.
struct PlannedMeal {
    int day = 0;
    double hour = 12;
    Slot slot = Slot::snack;
    Food food;
    bool written = true;
};

/// An evening on which the client walks or does not, whatever the routine says: of a trial by lot.
struct PlannedWalk {
    int day = 0;
    bool walks = false;
};

/// How well the client writes.
struct DiaryHabit {
    double forgets_breakfast = 0.05;
    double forgets_lunch = 0.06;
    double forgets_snack = 0.15;
    double forgets_dinner = 0.06;
    double forgets_large = 0;  ///< more, for meals above 60 g: not missing at random
    double forgets_sleep = 0.05;
    double forgets_walk = 0.08;
    int round_minutes = 5;             ///< times are written to the nearest of these
    double carbohydrate_error = 0.12;  ///< relative deviation of what is guessed
    bool writes_carbohydrate = true;
    double finger_prick_chance = 0;  ///< on waking; the meter is off by 7 % (relative SD)
};

/// One sensor worn.
struct WearPlan {
    std::string label;
    SensorKind kind;
    WallTime put_on;
    std::chrono::minutes lasts{0};
    std::string end = "planned";  ///< "planned", "fell off", "still on", "sensor failed"
    std::string site = "upper arm, left";
    bool overpatch = false;
    double bias_z = 0;  ///< of exp(0.04 z); drawn where `bias_drawn`
    bool bias_drawn = true;
    std::vector<PressureDip> dips{};
    std::vector<SilentStretch> silences{};
    FileDialect dialect{};
    bool diary_within = false;  ///< diary rows stand in the same table
};

/// What is planted, how large, where it shows. README.md tells the same; a test holds the two
/// together.
struct PlantedTruth {
    std::string what;
    std::string size;
    std::string where;
};

/// One invented client.
struct ClientStory {
    std::string key;   ///< "linden": folder and stream of chance
    std::string name;  ///< "Client Linden (invented)"
    double body_mass_kg = 85;
    double basal_mg_per_dl = 128;
    GlucoseUnit unit = GlucoseUnit::mg_per_dl;  ///< of finger-pricks; the client's own
    std::string home_zone = "Europe/Berlin";
    struct ZoneSince {
        std::string at;  ///< wall time of the zone left behind, "2026-02-09 12:00"
        std::string zone;
    };
    std::vector<ZoneSince> zones;

    Routine routine;
    PlantedEffects effects;
    std::vector<LevelSince> levels;
    std::vector<PlannedLow> lows;
    std::vector<PlannedMeal> planned_meals;
    std::vector<PlannedWalk> planned_walks;
    std::vector<Food> breakfasts, lunches, snacks, dinners;
    DiaryHabit diary;
    std::string took = "metformin 500 mg";  ///< written at breakfast; empty: nothing is taken
    int took_until_day = story_days;
    std::vector<WearPlan> wears;
    FileDialect diary_dialect;  ///< of the diaries that are files of their own

    std::vector<PlantedTruth> truths;
    std::string facts;  ///< JSON: the facts of a client that no file of readings bears
};

/// The twelve, in alphabetical order of key.
std::vector<ClientStory> client_stories();

}  // namespace tracewright
