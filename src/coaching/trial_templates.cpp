#include "coaching/trial_templates.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

// Meals carry over little after five hours; what is done in the evening may reach into the next
// day, so those leave one free. Common practice, no source.
constexpr const char* meals_apart = "A meal reaches no further than about five hours.";
constexpr const char* free_day =
    "One free day lies between the two days of a pair, so that the evening before does not reach "
    "into the next one.";
constexpr const char* same_meal =
    "Eat the same meal, at the same time, on both days of a pair if you can.";

constexpr const char* same_dinner =
    "Eat the same dinner on both days of a pair if you can.";  // its time is what differs

constexpr std::array templates = {
    TrialTemplate{"walk-after-dinner", "Does a walk after dinner change the rise after dinner?",
                  "walk 15 minutes, begun within half an hour after dinner",
                  "no walk in the 90 minutes after dinner", Outcome::dinner_rise, Proposed::walking,
                  0, meals_apart, Cause::walk_after, same_meal, "walk", "no walk"},
    TrialTemplate{"walk-after-lunch", "Does a walk after lunch change the rise after lunch?",
                  "walk 15 minutes, begun within half an hour after lunch",
                  "no walk in the 90 minutes after lunch", Outcome::lunch_rise, Proposed::walking,
                  0, meals_apart, Cause::walk_after, same_meal, "walk", "no walk"},
    TrialTemplate{
        "walk-after-breakfast", "Does a walk after breakfast change the rise after breakfast?",
        "walk 15 minutes, begun within half an hour after breakfast",
        "no walk in the 90 minutes after breakfast", Outcome::breakfast_rise, Proposed::walking, 0,
        meals_apart, Cause::walk_after, same_meal, "walk", "no walk"},
    TrialTemplate{"walk-at-once", "Walk at once after dinner, or an hour later?",
                  "walk 15 minutes right after dinner", "walk 15 minutes an hour after dinner",
                  Outcome::dinner_rise, Proposed::walking, 0, meals_apart, std::nullopt, same_meal,
                  "walk at once", "walk later"},
    TrialTemplate{"vegetables-first",
                  "Does eating vegetables and protein first change the rise after dinner?",
                  "eat vegetables and protein first, the rest ten minutes later",
                  "eat all together", Outcome::dinner_rise, Proposed::food_change, 0, meals_apart,
                  std::nullopt, same_meal, "greens first", "all together"},
    TrialTemplate{"earlier-dinner", "Does an earlier dinner change fasting glucose?",
                  "dinner done by 18:30", "dinner at 21:00", Outcome::fasting,
                  Proposed::food_change, 1, free_day, std::nullopt, same_dinner, "early dinner",
                  "late dinner"},
    TrialTemplate{"breakfast-skipped", "Does skipping breakfast change the rise after lunch?",
                  "no breakfast", "the usual breakfast", Outcome::lunch_rise,
                  Proposed::meal_skipping, 0, meals_apart, std::nullopt,
                  "Eat the same lunch on both days of a pair if you can.", "no breakfast",
                  "breakfast"},
    TrialTemplate{"low-carb-breakfast",
                  "Does a breakfast with little carbohydrate change hours in range?",
                  "a breakfast with under 10 g of carbohydrate", "the usual breakfast",
                  Outcome::hours_in_range, Proposed::low_carbohydrate, 0, meals_apart, std::nullopt,
                  "Eat the same lunch and dinner on both days of a pair if you can.",
                  "other breakfast", "as usual"},
    TrialTemplate{"sitting-broken-up", "Does getting up each half hour change the day's mean?",
                  "three minutes of walking each half hour of the working day",
                  "the working day as it is", Outcome::day_mean, Proposed::walking, 0,
                  "A day of moving may reach into the night; the day ends at midnight.",
                  std::nullopt, "Keep meals alike on both days of a pair if you can.", "get up",
                  "as usual"},
    TrialTemplate{"earlier-bedtime", "Does an hour more in bed change fasting glucose?",
                  "lights out an hour earlier", "the usual bedtime", Outcome::fasting,
                  Proposed::other, 1, free_day, std::nullopt,
                  "Eat the same dinner on both days of a pair if you can.", "early to bed",
                  "as usual"},
};

}  // namespace

std::span<const TrialTemplate> trial_templates() {
    return templates;
}

const TrialTemplate* trial_template_called(std::string_view code) {
    const auto found =
        std::ranges::find_if(templates, [&](const TrialTemplate& one) { return one.code == code; });
    return found == templates.end() ? nullptr : &*found;
}

const char* unit_of(const TrialTemplate& made_from) {
    const OutcomeFacts& facts = facts_of(made_from.outcome);
    return facts.of == OutcomeOf::night ? "night"
           : facts.of == OutcomeOf::day ? "day"
                                        : name_of(*facts.slot);
}

}  // namespace tracewright
