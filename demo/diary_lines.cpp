#include "client_life.hpp"
#include "number_words.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tracewright {

namespace {

using namespace std::chrono_literals;
using std::chrono::minutes;

class Writer {
  public:
    Writer(const ClientStory& story, const ZoneHistory& zones, const LivedWear& wear,
           std::uint64_t seed)
        : story_(story),
          zones_(zones),
          wear_(wear),
          draws_(seed, story.key + " " + wear.plan.label + " diary") {}

    void write(const StoryDay& day) {
        const DiaryHabit& habit = story_.diary;
        if (!draws_.chance(habit.forgets_sleep)) {
            add({.at = rounded(day.wake + minutes{draws_.whole(0, 20)}),
                 .slept = number_words(std::round(day.slept_hours * 4) / 4, 2)});
        }
        if (draws_.chance(habit.finger_prick_chance)) {
            prick(day);
        }
        for (const EatenMeal& meal : day.meals) {
            write_meal(meal, day);
        }
        if (day.walk && !draws_.chance(habit.forgets_walk)) {
            add({.at = rounded(*day.walk),
                 .moved = "walk after dinner",
                 .minutes = std::to_string(walk_minutes)});
        }
        if (draws_.chance(0.08)) {
            constexpr const char* moods[] = {"tense day", "tired", "good day", "calm"};
            add({.at = rounded(day.date + 20h), .mood = moods[draws_.whole(0, 3)]});
        }
    }

    std::vector<DiaryLine> lines() {
        std::stable_sort(lines_.begin(), lines_.end(), [&](const DiaryLine& a, const DiaryLine& b) {
            return zones_.resolve(a.at).first < zones_.resolve(b.at).first;
        });
        return std::move(lines_);
    }

  private:
    const ClientStory& story_;
    const ZoneHistory& zones_;
    const LivedWear& wear_;
    Draws draws_;
    std::vector<DiaryLine> lines_;

    WallTime rounded(WallTime at) const {
        const auto step = static_cast<long>(story_.diary.round_minutes) * 60;
        const auto seconds = at.time_since_epoch().count();
        return WallTime{std::chrono::seconds{(seconds + step / 2) / step * step}};
    }

    // Only what lies within the wear, and only times that the client's clock did show.
    void add(DiaryLine line) {
        const WallResolution at = zones_.resolve(line.at);
        if (at.kind != WallResolution::Kind::skipped && wear_.worn.contains(at.first)) {
            lines_.push_back(std::move(line));
        }
    }

    double forgets(const EatenMeal& meal) const {
        const DiaryHabit& habit = story_.diary;
        const double by_slot[] = {habit.forgets_breakfast, habit.forgets_lunch, habit.forgets_snack,
                                  habit.forgets_dinner};
        return by_slot[static_cast<std::size_t>(meal.slot)] +
               (meal.carbohydrate_g > 60 ? habit.forgets_large : 0);
    }

    void write_meal(const EatenMeal& meal, const StoryDay& day) {
        const bool forgotten = draws_.chance(forgets(meal));
        const int late = draws_.whole(-5, 12);
        const std::string grams = guessed(meal.carbohydrate_g);
        if (meal.slot == Slot::breakfast && !story_.took.empty() &&
            day.number < story_.took_until_day && !draws_.chance(0.04)) {
            add({.at = rounded(meal.at), .medicine = story_.took});
        }
        if (!forgotten && meal.will_be_written) {
            add({.at = rounded(meal.at + minutes{late}),
                 .eaten = meal.food.name,
                 .carbohydrate = story_.diary.writes_carbohydrate ? grams : ""});
        }
    }

    // To the nearest five grams, as people guess; now and then with a mark or as a span.
    std::string guessed(double grams) {
        const double off = draws_.normal(1, story_.diary.carbohydrate_error);
        const int five = std::max(5, static_cast<int>(std::lround(grams * off / 5)) * 5);
        const int way = draws_.whole(0, 11);
        if (way == 0) {
            return "~" + std::to_string(five);
        }
        if (way == 1) {
            return std::to_string(five) + " g";
        }
        if (way == 2) {
            return std::to_string(std::max(5, five - 5)) + "-" + std::to_string(five + 5);
        }
        return std::to_string(five);
    }

    void prick(const StoryDay& day) {
        const Instant at = zones_.resolve(day.wake).first;
        const auto minute = (at - wear_.worn.from) / 1min;
        const double off = draws_.normal(1, 0.07);
        if (minute >= 0 && minute < static_cast<std::ptrdiff_t>(wear_.course.size())) {
            const double level = wear_.course[static_cast<std::size_t>(minute)] * off;
            add({.at = rounded(day.wake), .finger_prick = pricked_words(level, story_.unit)});
        }
    }
};

}  // namespace

std::vector<DiaryLine> diary_lines(const ClientStory& story, const std::vector<StoryDay>& days,
                                   const ZoneHistory& zones, const LivedWear& wear,
                                   std::uint64_t seed) {
    Writer writer(story, zones, wear, seed);
    const CivilDate first = zones.date_at(wear.worn.from);
    const CivilDate last = zones.date_at(wear.worn.to);
    for (const StoryDay& day : days) {
        if (first <= day.date && day.date <= last) {
            writer.write(day);
        }
    }
    return writer.lines();
}

}  // namespace tracewright
