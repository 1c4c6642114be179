#include "findings/outcome_values.hpp"

#include "measures/day_sums.hpp"
#include "measures/time_in_bands.hpp"
#include "responses/meal_response.hpp"

#include <algorithm>
#include <chrono>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

OutcomeValue none(std::string why) {
    OutcomeValue result;
    result.none_because = std::move(why);
    return result;
}

double mg(const Reading& reading) {
    return reading.value().in(GlucoseUnit::mg_per_dl);
}

std::vector<double> levels_in(const TraceView& trace, Interval window) {
    std::vector<double> levels;
    for (const Reading& reading : readings_within(cut(trace, window))) {
        if (!reading.implausible()) {
            levels.push_back(mg(reading));
        }
    }
    return levels;
}

double median_of(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// The first of waking, eating and moving on the morning.
std::optional<Instant> morning_begins(const DiaryOfDay& diary) {
    std::optional<Instant> first;
    const auto take = [&](Instant at) { first = first ? std::min(*first, at) : at; };
    if (diary.sleep != nullptr) {
        take(*diary.sleep->until);
    }
    for (const DiaryEntry* entry : diary.within) {
        const bool counts = entry->kind == DiaryKind::meal || entry->kind == DiaryKind::movement;
        const bool timed = !entry->time_uncertain;
        if (counts && timed && entry->at < diary.day.from + 14h) {
            take(entry->at);
        }
    }
    return first;
}

const DiaryEntry* first_meal(const DiaryOfDay& diary) {
    for (const DiaryEntry* entry : diary.within) {
        if (entry->kind == DiaryKind::meal && !entry->time_uncertain) {
            return entry;
        }
    }
    return nullptr;
}

// Medians of five neighbouring readings.
std::vector<double> medians_of_five(const std::vector<double>& levels) {
    std::vector<double> medians;
    for (std::size_t i = 0; i + 5 <= levels.size(); ++i) {
        const auto from = levels.begin() + static_cast<std::ptrdiff_t>(i);
        medians.push_back(median_of({from, from + 5}));
    }
    return medians;
}

}  // namespace

DiaryOfDay diary_of_day(const Diary& diary, const CivilDay& day, const ZoneHistory& zones) {
    DiaryOfDay result{day, nullptr, {}, {}};
    const CivilDay before = zones.day_of(day.date - std::chrono::days{1});
    const Instant evening = zones.clock_window(before, 15h, 24h).from;
    const Instant morning = zones.clock_window(day, 4h, 24h).from;
    const Instant next_morning = morning + 24h;
    const Interval wakes = zones.clock_window(day, 3h, 15h);
    for (const DiaryEntry& entry : diary) {
        if (entry.kind == DiaryKind::sleep && entry.until && wakes.contains(*entry.until)) {
            const bool longer = result.sleep == nullptr ||
                                *entry.until - entry.at > *result.sleep->until - result.sleep->at;
            result.sleep = longer ? &entry : result.sleep;
        } else if (evening <= entry.at && entry.at < morning) {
            result.before.push_back(&entry);
        } else if (morning <= entry.at && entry.at < next_morning) {
            result.within.push_back(&entry);
        }
    }
    return result;
}

OutcomeValue fasting_glucose(const DiaryOfDay& diary, const Diary& all, const TraceView& trace) {
    const auto begins = morning_begins(diary);
    if (!begins) {
        return none("no waking, food or movement noted that morning");
    }
    const Interval window{*begins - 1h, *begins};
    for (const DiaryEntry& entry : all) {
        if (entry.kind == DiaryKind::meal && entry.at < window.to && entry.at > window.from - 6h) {
            return none("food less than 6 h before");
        }
    }
    const std::vector<double> levels = levels_in(trace, window);
    if (levels.size() < 4) {
        return none("fewer than 4 readings in the hour before");
    }
    OutcomeValue result;
    result.value = median_of(levels);
    result.made_of = window;
    return result;
}

OutcomeValue overnight_glucose(const DiaryOfDay& diary, const TraceView& trace,
                               const ZoneHistory& zones) {
    Interval night = zones.clock_window(diary.day, 0h, 6h);
    if (diary.sleep != nullptr && diary.sleep->until) {
        night = {diary.sleep->at, *diary.sleep->until};
    }
    const TraceView part = cut(trace, night);
    double seconds = 0;
    double sum = 0;
    for_each_standing(part, [&](const Reading& reading, std::chrono::seconds stood) {
        seconds += static_cast<double>(stood.count());
        sum += static_cast<double>(stood.count()) * mg(reading);
    });
    if (seconds < 0.7 * static_cast<double>(night.length().count()) || seconds <= 0) {
        return none("less than 70 % of the night sensed");
    }
    OutcomeValue result;
    result.value = sum / seconds;
    result.made_of = night;
    return result;
}

OutcomeValue dawn_rise(const DiaryOfDay& diary, const TraceView& trace, const ZoneHistory& zones) {
    const DiaryEntry* breakfast = first_meal(diary);
    if (breakfast == nullptr || breakfast->at > diary.day.from + 12h) {
        return none("no breakfast noted");
    }
    const Interval night = zones.clock_window(diary.day, 0h, 6h);
    for (const DiaryEntry* entry : diary.before) {
        if (entry->kind == DiaryKind::meal && entry->at >= night.from) {
            return none("food in the night");
        }
    }
    const std::vector<double> levels = levels_in(trace, night);
    const std::vector<double> before =
        levels_in(trace, {breakfast->at - 75min, breakfast->at + 1s});
    if (levels.size() < 5 || before.size() < 5) {
        return none("fewer than 5 readings in the night or before breakfast");
    }
    if (std::any_of(levels.begin(), levels.end(), [](double level) { return level < 70; })) {
        return none("a low in the night");
    }
    const std::vector<double> medians = medians_of_five(levels);
    OutcomeValue result;
    result.value = median_of({before.end() - 5, before.end()}) -
                   *std::min_element(medians.begin(), medians.end());
    result.made_of = {night.from, breakfast->at};
    return result;
}

OutcomeValue meal_rise(MealSlot slot, const CivilDay& day,
                       std::span<const EatingOccasion> occasions, const TraceView& trace,
                       const ZoneHistory& zones) {
    const Interval from_four{zones.clock_window(day, 4h, 24h).from,
                             zones.clock_window(day, 4h, 24h).from + 24h};
    std::string why;
    for (std::size_t i = 0; i < occasions.size(); ++i) {
        if (occasions[i].slot != slot || !from_four.contains(occasions[i].at)) {
            continue;
        }
        const EatingOccasion* next = i + 1 < occasions.size() ? &occasions[i + 1] : nullptr;
        const MealResponse response = meal_response(occasions[i], next, trace);
        if (!response.not_readable.empty()) {
            why = response.not_readable;
        } else if (!response.area_3h) {
            why = response.cut_short ? "another meal within three hours"
                                     : "fewer than three hours seen";
        } else {
            OutcomeValue result;
            result.value = *response.area_3h / 180;
            result.made_of = {occasions[i].at, occasions[i].at + 3h};
            result.adjusters["glucose at the start"] = response.baseline;
            if (occasions[i].carbohydrate_g) {
                result.adjusters["carbohydrate"] = *occasions[i].carbohydrate_g;
            }
            return result;
        }
    }
    OutcomeValue result = none(why.empty() ? std::string("no ") + name_of(slot) + " noted" : why);
    result.meal_not_noted = why.empty();
    return result;
}

OutcomeValue day_value(Outcome outcome, const CivilDay& day, const TraceView& trace,
                       const ZoneHistory& zones) {
    const std::vector<DayOfTrace> days = days_of_trace(cut(trace, day.interval()), zones);
    const auto found = std::find_if(days.begin(), days.end(),
                                    [&](const DayOfTrace& of) { return of.date == day.date; });
    if (found == days.end() ||
        found->sums.seconds < 0.7 * static_cast<double>(day.length().count())) {
        return none("less than 70 % of the day sensed");
    }
    OutcomeValue result;
    result.made_of = day.interval();
    const GlucoseSums& sums = found->sums;
    const auto hours_in = [&](Band band) {
        return 24 * sums.band_seconds[static_cast<std::size_t>(band)] / sums.seconds;
    };
    switch (outcome) {
        case Outcome::hours_in_range:
            result.value = hours_in(Band::in_range);
            break;
        case Outcome::hours_high:
            result.value = hours_in(Band::high) + hours_in(Band::very_high);
            break;
        case Outcome::hours_low:
            result.value = hours_in(Band::low) + hours_in(Band::very_low);
            break;
        case Outcome::spread:
            result.value = sums.sd(GlucoseUnit::mg_per_dl);
            break;
        default:
            result.value = sums.mean(GlucoseUnit::mg_per_dl);
    }
    return result;
}

}  // namespace tracewright
