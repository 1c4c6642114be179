#include "glucose_course.hpp"

#include "meal_model.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numbers>
#include <sstream>
#include <stdexcept>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr double night_begins = 22;  // of the evening before
constexpr double night_ends = 9;

Zone zone_or_throw(const std::string& name) {
    auto zone = Zone::named(name);
    if (!zone) {
        throw std::runtime_error(zone.error());
    }
    return *zone;
}

// "2026-02-09 12:00"
WallTime wall_time_of(const std::string& text) {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    int hour = 0;
    int minute = 0;
    char mark = 0;
    std::istringstream in(text);
    in >> year >> mark >> month >> mark >> day >> hour >> mark >> minute;
    return CivilDate{std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{day}} +
           std::chrono::hours{hour} + std::chrono::minutes{minute};
}

struct EatenAt {
    Instant at;
    double grams;
};

// Everything that is known of a moment's day, night and habits.
class Influences {
  public:
    Influences(const ClientStory& story, std::span<const StoryDay> days, const ZoneHistory& zones)
        : story_(story), days_(days), clock_(zones) {
        for (const StoryDay& day : days) {
            if (day.walk) {
                walks_.push_back(zones.resolve(*day.walk).first);
            }
        }
    }

    MealModelFactors at(Instant moment, double glucose) {
        const WallTime wall = clock_.at(moment);
        const CivilDate date = std::chrono::floor<std::chrono::days>(wall);
        const double hour = static_cast<double>((wall - date).count()) / 3600;
        const StoryDay& today = day(date);
        MealModelFactors factors;
        factors.kp1 = 1 + 0.06 * std::cos(2 * std::numbers::pi * (hour - 5) / 24);
        if (hour < night_ends || hour >= night_begins) {
            factors.kp1 *= night(day(hour < night_ends ? date : date + std::chrono::days{1}));
        }
        factors.kp1 *= low(today.number, hour, glucose);
        factors.kp3 = today.kp3_factor;
        factors.vmx = today.vmx_factor *
                      std::max(0.2, 1 - story_.effects.uptake_per_hour_short * today.hours_short());
        if (walked_before(moment)) {
            factors.vmx *= story_.effects.uptake_after_walk;
        }
        return factors;
    }

  private:
    const ClientStory& story_;
    std::span<const StoryDay> days_;
    WallClock clock_;
    std::vector<Instant> walks_;

    const StoryDay& day(CivilDate date) const {
        const auto number = (date - days_.front().date).count();
        const auto last = static_cast<std::ptrdiff_t>(days_.size()) - 1;
        return days_[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(number, 0, last))];
    }
    double night(const StoryDay& morning) const {
        const StoryDay& evening = day(morning.date - std::chrono::days{1});
        return morning.night_factor *
               (1 + story_.effects.production_per_hour_short * morning.hours_short() +
                story_.effects.production_per_hour_late * evening.hours_late());
    }
    double low(int number, double hour, double glucose) const {
        for (const PlannedLow& planned : story_.lows) {
            if (planned.day == number && hour >= planned.from_hour &&
                hour < planned.from_hour + planned.hours && glucose > planned.floor_mg_per_dl) {
                return planned.production;
            }
        }
        return 1;
    }
    bool walked_before(Instant moment) const {
        return std::any_of(walks_.begin(), walks_.end(),
                           [&](Instant walk) { return walk <= moment && moment < walk + 2h; });
    }
};

std::vector<EatenAt> eaten(std::span<const StoryDay> days, const ZoneHistory& zones) {
    std::vector<EatenAt> result;
    for (const StoryDay& day : days) {
        for (const EatenMeal& meal : day.meals) {
            result.push_back({zones.resolve(meal.at).first, meal.carbohydrate_g * meal.food.rise});
        }
    }
    std::stable_sort(result.begin(), result.end(),
                     [](const EatenAt& a, const EatenAt& b) { return a.at < b.at; });
    return result;
}

double level_on(const ClientStory& story, int day) {
    double level = story.basal_mg_per_dl;
    for (const LevelSince& since : story.levels) {
        level = since.day <= day ? since.basal_mg_per_dl : level;
    }
    return level;
}

}  // namespace

ZoneHistory zones_of(const ClientStory& story) {
    ZoneHistory zones(zone_or_throw(story.home_zone));
    for (const auto& change : story.zones) {
        zones.change(zones.resolve(wall_time_of(change.at)).first, zone_or_throw(change.zone));
    }
    return zones;
}

std::vector<double> glucose_course(const ClientStory& story, std::span<const StoryDay> days,
                                   const ZoneHistory& zones, Interval window) {
    Influences influences(story, days, zones);
    const auto meals = eaten(days, zones);
    const Instant start = window.from - 24h;
    const auto first_day = (zones.date_at(window.from) - first_story_day).count();
    // A wear has one resting level: levels change between wears.
    MealModel body(
        with_basal_glucose(type_two_parameters(), level_on(story, static_cast<int>(first_day))),
        story.body_mass_kg);
    auto meal = std::lower_bound(meals.begin(), meals.end(), start,
                                 [](const EatenAt& a, Instant at) { return a.at < at; });
    std::vector<double> course;
    for (Instant now = start; now < window.to; now += 1min) {
        for (; meal != meals.end() && meal->at <= now; ++meal) {
            body.eat(meal->grams);
        }
        if (now >= window.from) {
            course.push_back(body.glucose());
        }
        body.pass(1, influences.at(now, body.glucose()));
    }
    return course;
}

}  // namespace tracewright
