#include "client_days.hpp"

#include "draws.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::days;
using std::chrono::minutes;

WallTime at_hour(CivilDate date, double hour) {
    return date + minutes{std::lround(hour * 60)};
}

struct Evening {
    double dinner_hour = 0;
    double slept_hours = 0;  // in the night that follows
};

Evening evening_of(const Routine& routine, Draws& draws) {
    if (routine.late_with_short > 0) {
        const double late = draws.normal();
        const double other = draws.normal();
        const double r = routine.late_with_short;
        const double tired = r * late + std::sqrt(1 - r * r) * other;
        return {std::clamp(20.3 + 1.1 * late, 18.0, 22.5), std::clamp(6.5 - tired, 4.0, 8.5)};
    }
    const bool late = draws.chance(routine.late_dinner_chance);
    const bool brief = draws.chance(routine.short_night_chance);
    const double hour = late ? routine.late_dinner_hour : routine.dinner_hour;
    const double slept = brief ? routine.short_slept_hours : routine.slept_hours;
    return {hour + draws.normal(0, 0.2), slept + draws.normal(0, 0.35)};
}

class DayMaker {
  public:
    DayMaker(const ClientStory& story, std::uint64_t seed)
        : story_(story),
          habits_(seed, story.key + " habits"),
          plates_(seed, story.key + " plates"),
          factors_(seed, story.key + " factors") {}

    StoryDay make(int number) {
        StoryDay day;
        day.number = number;
        day.date = first_story_day + days{number};
        const Evening before = evening_;
        evening_ = evening_of(story_.routine, habits_);
        day.slept_hours = std::round(before.slept_hours * 12) / 12;
        day.wake = at_hour(day.date, story_.routine.wake_hour + habits_.normal(0, 0.25));
        day.bed = day.wake - minutes{std::lround(day.slept_hours * 60)};
        day.dinner_hour = evening_.dinner_hour;
        eat(day);
        if (habits_.chance(story_.routine.walk_after_dinner_chance)) {
            day.walk = at_hour(day.date, day.dinner_hour) + minutes{habits_.whole(15, 35)};
        }
        for (const PlannedWalk& planned : story_.planned_walks) {
            if (planned.day == number) {
                day.walk.reset();
                if (planned.walks) {
                    day.walk = at_hour(day.date, day.dinner_hour) + minutes{20};
                }
            }
        }
        draw_factors(day);
        return day;
    }

  private:
    const ClientStory& story_;
    Draws habits_;
    Draws plates_;
    Draws factors_;
    Evening evening_{18.75, 7.2};
    double log_kp3_ = 0;
    double log_vmx_ = 0;

    void add(StoryDay& day, WallTime at, Slot slot, const std::vector<Food>& choice) {
        const Food& food =
            choice[static_cast<std::size_t>(plates_.whole(0, static_cast<int>(choice.size()) - 1))];
        const double portion =
            story_.routine.appetite *
            std::clamp(plates_.normal(1, story_.routine.portion_deviation), 0.5, 1.7);
        day.meals.push_back({at, slot, food, std::round(food.carbohydrate_g * portion), true});
    }

    bool planned(int number, Slot slot) const {
        return std::any_of(
            story_.planned_meals.begin(), story_.planned_meals.end(),
            [&](const PlannedMeal& meal) { return meal.day == number && meal.slot == slot; });
    }

    void eat(StoryDay& day) {
        const bool snack = habits_.chance(story_.routine.snack_chance);
        const minutes after_waking{habits_.whole(25, 55)};
        const double lunch = 12.6 + habits_.normal(0, 0.3);
        const double tea = 15.8 + habits_.normal(0, 0.35);
        if (!planned(day.number, Slot::breakfast)) {
            add(day, day.wake + after_waking, Slot::breakfast, story_.breakfasts);
        }
        if (!planned(day.number, Slot::lunch)) {
            add(day, at_hour(day.date, lunch), Slot::lunch, story_.lunches);
        }
        if (snack && !planned(day.number, Slot::snack)) {
            add(day, at_hour(day.date, tea), Slot::snack, story_.snacks);
        }
        if (!planned(day.number, Slot::dinner)) {
            add(day, at_hour(day.date, day.dinner_hour), Slot::dinner, story_.dinners);
        }
        for (const PlannedMeal& meal : story_.planned_meals) {
            if (meal.day == day.number) {
                day.meals.push_back({at_hour(day.date, meal.hour), meal.slot, meal.food,
                                     meal.food.carbohydrate_g, meal.written});
            }
        }
        std::sort(day.meals.begin(), day.meals.end(),
                  [](const EatenMeal& a, const EatenMeal& b) { return a.at < b.at; });
    }

    void draw_factors(StoryDay& day) {
        constexpr double deviation = 0.12;
        constexpr double memory = 0.3;
        const double fresh = deviation * std::sqrt(1 - memory * memory);
        log_kp3_ = memory * log_kp3_ + factors_.normal(0, fresh);
        log_vmx_ = memory * log_vmx_ + factors_.normal(0, fresh);
        day.kp3_factor = std::exp(log_kp3_);
        day.vmx_factor = std::exp(log_vmx_);
        day.night_factor = std::exp(factors_.normal(0, 0.04));
    }
};

}  // namespace

const char* words_for(Slot slot) {
    constexpr const char* words[] = {"breakfast", "lunch", "snack", "dinner"};
    return words[static_cast<std::size_t>(slot)];
}

std::vector<StoryDay> client_days(const ClientStory& story, std::uint64_t seed) {
    DayMaker maker(story, seed);
    std::vector<StoryDay> result;
    for (int number = -1; number < story_days; ++number) {
        result.push_back(maker.make(number));
    }
    return result;
}

}  // namespace tracewright
