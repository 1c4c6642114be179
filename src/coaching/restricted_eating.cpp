#include "coaching/restricted_eating.hpp"

#include "coaching/eating_care.hpp"
#include "coaching/prescriber_answer.hpp"
#include "coaching/type_signs.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <map>

namespace tracewright {

namespace {

// Safety rule 8, our own rule.
constexpr double least_grams = 130;
constexpr std::chrono::hours longest_without_food{12};
constexpr int days_to_mean = 3;
constexpr int meals_of_a_whole_day = 3;

struct DayEaten {
    double grams = 0;
    int meals = 0;
    bool all_told = true;

    bool whole() const { return all_told && meals >= meals_of_a_whole_day; }
};

using Days = std::map<CivilDate, DayEaten>;

Days days_of(std::span<const DiaryEntry> diary, const ZoneHistory& clock) {
    Days days;
    for (const DiaryEntry& entry : diary) {
        if (entry.kind == DiaryKind::meal) {
            DayEaten& day = days[clock.date_at(entry.at)];
            ++day.meals;
            day.all_told = day.all_told && entry.carbohydrate_g;
            day.grams += entry.carbohydrate_g ? entry.carbohydrate_g->value : 0;
        }
    }
    return days;
}

std::optional<RestrictedEating::LittleCarbohydrate> little_carbohydrate(const Days& days) {
    std::optional<RestrictedEating::LittleCarbohydrate> least;
    for (const auto& [date, first] : days) {
        double grams = 0;
        bool whole = true;
        for (int i = 0; i < days_to_mean && whole; ++i) {
            const auto found = days.find(date + std::chrono::days{i});
            whole = found != days.end() && found->second.whole();
            grams += whole ? found->second.grams : 0;
        }
        const double mean = grams / days_to_mean;
        if (whole && mean < least_grams && (!least || mean < least->grams_a_day)) {
            least = {date, mean};
        }
    }
    return least;
}

bool a_day_lies_within(Instant from, Instant to, const ZoneHistory& clock) {
    return clock.date_at(to) - clock.date_at(from) > std::chrono::days{1};
}

std::optional<RestrictedEating::LongGap> long_gap(std::span<const DiaryEntry> diary,
                                                  const ZoneHistory& clock) {
    std::optional<RestrictedEating::LongGap> longest;
    const DiaryEntry* last = nullptr;
    for (const DiaryEntry& entry : diary) {
        if (entry.kind != DiaryKind::meal) {
            continue;
        }
        if (last != nullptr && entry.at - last->at > longest_without_food &&
            !a_day_lies_within(last->at, entry.at, clock)) {
            const int count = longest ? longest->count + 1 : 1;
            if (!longest || entry.at - last->at > longest->to - longest->from) {
                longest = RestrictedEating::LongGap{last->at, entry.at, count};
            }
            longest->count = count;
        }
        last = &entry;
    }
    return longest;
}

bool may_be_sglt2_or_another_type(const CareInput& input) {
    return input.medicines.risks_at(input.as_of).sglt2 || !type_signs(input).empty();
}

bool answered(const CareInput& input, AskedAbout about) {
    return answer_that_holds(input.facts.prescriber_answers, about, input.as_of, input.medicines,
                             input.clock) != nullptr;
}

std::string why(const CareInput& input) {
    const MedicineRisks risks = input.medicines.risks_at(input.as_of);
    if (!risks.sglt2) {
        return "while it is open whether the type has been checked";
    }
    return risks.answered ? "beside an SGLT2 inhibitor"
                          : "while the list of medicines is not answered and counts as holding an "
                            "SGLT2 inhibitor";
}

}  // namespace

RestrictedEating restricted_eating(std::span<const DiaryEntry> diary, const ZoneHistory& clock) {
    return {little_carbohydrate(days_of(diary, clock)), long_gap(diary, clock)};
}

std::optional<RestrictedEatingToTell> restricted_eating_to_tell(const CareInput& input) {
    if (!may_be_sglt2_or_another_type(input)) {
        return std::nullopt;
    }
    const RestrictedEating seen = restricted_eating(input.diary, input.clock);
    RestrictedEatingToTell told;
    if (seen.little_carbohydrate && !answered(input, AskedAbout::low_carbohydrate)) {
        const std::string how_much = numbers_turned_down(input.facts.cautions.eating)
                                         ? "little carbohydrate"
                                         : fmt::format("{:.0f} g of carbohydrate a day",
                                                       seen.little_carbohydrate->grams_a_day);
        told.seen = fmt::format("The diary has {} over three days from {}.", how_much,
                                full_date(seen.little_carbohydrate->from, input.clock.writing()));
        told.from = input.clock.day_of(seen.little_carbohydrate->from).from;
    }
    if (seen.long_gap && !answered(input, AskedAbout::fasting)) {
        told.from = told.seen.empty() ? seen.long_gap->from : told.from;
        told.seen += fmt::format(
            "{}The diary has {} without food from {}{}.", told.seen.empty() ? "" : " ",
            hours_and_minutes(seen.long_gap->to - seen.long_gap->from),
            day_and_time(input.clock.wall_time(seen.long_gap->from), input.clock.writing()),
            seen.long_gap->count > 1
                ? fmt::format(", one of {} gaps over 12 h", seen.long_gap->count)
                : std::string());
    }
    if (told.seen.empty()) {
        return std::nullopt;
    }
    told.seen += " This is " + why(input) + ".";
    told.next =
        "Ask whether something was not written down; tell the prescriber, and write down the "
        "answer. If the client is ill, vomiting or can't eat: the clinic today, even when glucose "
        "looks normal.";
    return told;
}

std::string restricted_eating_for_coach(const CareInput& input) {
    const auto told = restricted_eating_to_tell(input);
    return told ? told->seen + " " + told->next : std::string();
}

std::string sick_day_line(const CareInput& input) {
    return input.medicines.risks_at(input.as_of).sglt2
               ? "If you are ill, vomiting or can't eat, ring your clinic today, even when your "
                 "glucose looks normal."
               : std::string();
}

}  // namespace tracewright
