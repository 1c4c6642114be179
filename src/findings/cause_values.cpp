#include "findings/cause_values.hpp"

#include "diary/written_words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <string_view>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

double hours(std::chrono::seconds time) {
    return static_cast<double>(time.count()) / 3600;
}

// Nights look back to the evening before; days and meals to themselves, but for dinner of a
// breakfast.
bool looks_back(Outcome outcome) {
    return facts_of(outcome).of == OutcomeOf::night || outcome == Outcome::breakfast_rise;
}

const EatingOccasion* dinner_of(Outcome outcome, const DiaryOfDay& today,
                                std::span<const EatingOccasion> occasions,
                                const ZoneHistory& zones) {
    const CivilDay day =
        looks_back(outcome) ? zones.day_of(today.day.date - std::chrono::days{1}) : today.day;
    const Instant from = zones.clock_window(day, 16h, 24h).from;
    const EatingOccasion* found = nullptr;
    for (const EatingOccasion& occasion : occasions) {
        const bool then = from <= occasion.at && occasion.at < from + 12h;
        // The largest that is known; of unknown ones the latest.
        if (then && occasion.slot == MealSlot::dinner &&
            (found == nullptr ||
             occasion.carbohydrate_g.value_or(0) >= found->carbohydrate_g.value_or(0))) {
            found = &occasion;
        }
    }
    if (found != nullptr && found->time_uncertain) {
        return nullptr;
    }
    return found;
}

std::optional<double> last_meal_to_bed(const DiaryOfDay& today,
                                       std::span<const EatingOccasion> occasions) {
    if (today.sleep == nullptr) {
        return std::nullopt;
    }
    const Instant bed = today.sleep->at;
    std::optional<Instant> last;
    for (const EatingOccasion& occasion : occasions) {
        if (occasion.last <= bed && bed - occasion.last < 10h && !occasion.time_uncertain) {
            last = occasion.last;
        }
    }
    return last ? std::optional(hours(bed - *last)) : std::nullopt;
}

const std::vector<const DiaryEntry*>& entries_of(Outcome outcome, const DiaryOfDay& today) {
    return facts_of(outcome).of == OutcomeOf::night ? today.before : today.within;
}

bool any_of_kind(const std::vector<const DiaryEntry*>& entries, DiaryKind kind) {
    return std::any_of(entries.begin(), entries.end(),
                       [&](const DiaryEntry* entry) { return entry->kind == kind; });
}

// The day before of a night, else the day itself.
Interval day_lived(Outcome outcome, const DiaryOfDay& today, const ZoneHistory& zones) {
    return facts_of(outcome).of == OutcomeOf::night
               ? zones.day_of(today.day.date - std::chrono::days{1}).interval()
               : today.day.interval();
}

// Whether anything was written of the day that a client writes as it goes: of a blank page nobody
// knows that there was no walk and no wine.
bool written_of(Interval day, const Diary& all) {
    return std::ranges::any_of(all, [&](const DiaryEntry& entry) {
        switch (entry.kind) {
            case DiaryKind::meal:
            case DiaryKind::movement:
            case DiaryKind::sleep:
            case DiaryKind::mood:
            case DiaryKind::alcohol:
            case DiaryKind::illness:
            case DiaryKind::symptom:
            case DiaryKind::note:
                return day.contains(entry.at);
            case DiaryKind::medicine:
            case DiaryKind::finger_prick:
            case DiaryKind::ketones:
            case DiaryKind::lab:
            case DiaryKind::sensor:
                return false;
        }
        return false;
    });
}

double minutes_moved(Outcome outcome, const DiaryOfDay& today, const Diary& all,
                     const ZoneHistory& zones) {
    const Interval day = day_lived(outcome, today, zones);
    double minutes = 0;
    for (const DiaryEntry& entry : all) {
        if (entry.kind == DiaryKind::movement && entry.until && day.contains(entry.at)) {
            minutes += hours(*entry.until - entry.at) * 60;
        }
    }
    return minutes;
}

bool trained(Outcome outcome, const DiaryOfDay& today, const Diary& all, const ZoneHistory& zones) {
    const Interval day = day_lived(outcome, today, zones);
    return std::ranges::any_of(all, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::movement && day.contains(entry.at) &&
               speaks_of(entry, {"strength", "weights", "resistance", "gym"});
    });
}

bool shift_told(const std::vector<const DiaryEntry*>& entries) {
    return std::ranges::any_of(entries, [](const DiaryEntry* entry) {
        return speaks_of(*entry, {"night shift", "nightshift", "late shift", "early shift"});
    });
}

// Empty without a mood entry.
std::optional<double> tense(const std::vector<const DiaryEntry*>& entries) {
    static constexpr std::array words = {"tense", "stress", "worr", "anxious"};
    std::optional<double> found;
    for (const DiaryEntry* entry : entries) {
        if (entry->kind != DiaryKind::mood) {
            continue;
        }
        const bool says = std::any_of(words.begin(), words.end(), [&](const char* word) {
            return entry->text.find(word) != std::string::npos;
        });
        found = std::max(found.value_or(0), says ? 1.0 : 0.0);
    }
    return found;
}

std::optional<double> bedtime(const DiaryOfDay& today, const ZoneHistory& zones) {
    if (today.sleep == nullptr || today.sleep->time_uncertain) {
        return std::nullopt;
    }
    // Hours after the midnight between the two days; before it below 0.
    return hours(zones.wall_time(today.sleep->at) - WallTime{today.day.date});
}

// From 04:00 to 04:00; empty where nothing was eaten, a meal has no grams, or the grams of two
// meals follow two definitions: total and available carbohydrate are never added.
std::optional<double> carbohydrate_of_day(const CivilDay& day, const Diary& all,
                                          const ZoneHistory& zones) {
    const Instant from = zones.clock_window(day, 4h, 24h).from;
    double sum = 0;
    const DiaryEntry* first = nullptr;
    for (const DiaryEntry& entry : all) {
        if (entry.kind == DiaryKind::meal && from <= entry.at && entry.at < from + 24h) {
            first = first == nullptr ? &entry : first;
            if (!entry.carbohydrate_g || entry.carbohydrate_basis != first->carbohydrate_basis) {
                return std::nullopt;
            }
            sum += entry.carbohydrate_g->value;
        }
    }
    return first != nullptr ? std::optional(sum) : std::nullopt;
}

// Movement that begins in [from, to] of the first bite.
bool moved_near(const EatingOccasion& occasion, const Diary& all, std::chrono::seconds from,
                std::chrono::seconds to) {
    return std::ranges::any_of(all, [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::movement && entry.at >= occasion.at + from &&
               entry.at <= occasion.at + to;
    });
}

// 1: vegetables or protein before the starch, 0: the starch first; empty where the text tells
// neither, or both.
std::optional<double> order_within(const EatingOccasion& occasion) {
    const std::string text = small_letters(occasion.text());
    const auto says = [&](std::initializer_list<const char*> foods, const char* place) {
        return std::any_of(foods.begin(), foods.end(), [&](const char* food) {
            return text.find(std::string(food) + " " + place) != std::string::npos;
        });
    };
    const auto beside_starch = {"salad", "vegetables", "veg", "protein", "meat", "fish", "eggs"};
    const auto starch = {"bread", "rice", "pasta", "potatoes", "noodles", "carbs", "starch"};
    const bool before = says(beside_starch, "first") || says(starch, "last");
    const bool after = says(starch, "first") || says(beside_starch, "last");
    return before == after ? std::nullopt : std::optional(before ? 1.0 : 0.0);
}

// The day of the cycle that an entry tells; empty if it tells none.
std::optional<int> cycle_day_told(const DiaryEntry& entry) {
    if (speaks_of(entry, {"period began", "period started", "first day of period"})) {
        return 1;
    }
    constexpr std::string_view told = "cycle day ";
    const std::string text = small_letters(entry.text);
    const std::size_t at = text.find(told);
    int day = 0;
    if (at == std::string::npos ||
        std::from_chars(text.data() + at + told.size(), text.data() + text.size(), day).ec !=
            std::errc{}) {
        return std::nullopt;
    }
    return day >= 1 && day <= 60 ? std::optional(day) : std::nullopt;
}

std::optional<double> second_half_of_cycle(CivilDate date, const Diary& all,
                                           const ZoneHistory& zones) {
    std::optional<int> day;
    for (const DiaryEntry& entry : all) {
        const CivilDate told_on = zones.date_at(entry.at);
        if (told_on > date) {
            break;
        }
        const auto since = (date - told_on).count();
        if (const auto told = cycle_day_told(entry); told && since <= 35) {
            day = *told + static_cast<int>(since);
        }
    }
    return day && *day <= 60 ? std::optional(*day >= 15 ? 1.0 : 0.0) : std::nullopt;
}

}  // namespace

std::optional<double> cause_value(Cause cause, Outcome outcome, const DiaryOfDay& today,
                                  const EatingOccasion* occasion, const Diary& all,
                                  std::span<const EatingOccasion> occasions,
                                  const ZoneHistory& zones) {
    const auto or_silence = [&](double value) {
        const bool known = value > 0 || written_of(day_lived(outcome, today, zones), all);
        return known ? std::optional(value) : std::nullopt;
    };
    const EatingOccasion* dinner = dinner_of(outcome, today, occasions, zones);
    switch (cause) {
        case Cause::sleep:
            return today.sleep == nullptr
                       ? std::nullopt
                       : std::optional(today.sleep->number_unit == "h" && today.sleep->number
                                           ? *today.sleep->number
                                           : hours(*today.sleep->until - today.sleep->at));
        case Cause::bedtime:
            return bedtime(today, zones);
        case Cause::dinner_time:
            return dinner == nullptr
                       ? std::nullopt
                       : std::optional(hours(zones.wall_time(dinner->at) -
                                             WallTime{std::chrono::floor<std::chrono::days>(
                                                 zones.wall_time(dinner->at) - 4h)}));
        case Cause::last_meal_to_bed:
            return last_meal_to_bed(today, occasions);
        case Cause::dinner_carbohydrate:
            return dinner == nullptr ? std::nullopt : dinner->carbohydrate_g;
        case Cause::dinner_energy:
            return dinner == nullptr ? std::nullopt : dinner->energy_kcal;
        case Cause::meal_carbohydrate:
            return occasion == nullptr ? std::nullopt : occasion->carbohydrate_g;
        case Cause::day_carbohydrate:
            return carbohydrate_of_day(today.day, all, zones);
        case Cause::movement:
            return or_silence(minutes_moved(outcome, today, all, zones));
        case Cause::walk_after:
            return occasion == nullptr
                       ? std::nullopt
                       : std::optional(moved_near(*occasion, all, 0s, 90min) ? 1.0 : 0.0);
        case Cause::alcohol:
            return or_silence(any_of_kind(entries_of(outcome, today), DiaryKind::alcohol) ? 1.0
                                                                                          : 0.0);
        case Cause::stress:
            return tense(entries_of(outcome, today));
        case Cause::weekend: {
            const std::chrono::weekday weekday{
                std::chrono::sys_days{today.day.date.time_since_epoch()}};
            return weekday == std::chrono::Saturday || weekday == std::chrono::Sunday ? 1.0 : 0.0;
        }
        case Cause::travel:
            return zones.travel_days(today.day.interval()).empty() ? 0.0 : 1.0;
        case Cause::meal_energy:
            return occasion == nullptr ? std::nullopt : occasion->energy_kcal;
        case Cause::meal_order:
            return occasion == nullptr ? std::nullopt : order_within(*occasion);
        case Cause::strength:
            return or_silence(trained(outcome, today, all, zones) ? 1.0 : 0.0);
        case Cause::work_shift:
            return or_silence(shift_told(entries_of(outcome, today)) ? 1.0 : 0.0);
        case Cause::walk_before:
            return occasion == nullptr
                       ? std::nullopt
                       : std::optional(moved_near(*occasion, all, -90min, -1s) ? 1.0 : 0.0);
        case Cause::carbohydrate_before:
            return carbohydrate_of_day(zones.day_of(today.day.date - std::chrono::days{1}), all,
                                       zones);
        case Cause::cycle:
            return second_half_of_cycle(today.day.date, all, zones);
    }
    return std::nullopt;
}

}  // namespace tracewright
