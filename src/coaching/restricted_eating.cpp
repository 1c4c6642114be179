#include "coaching/restricted_eating.hpp"

#include "coaching/eating_care.hpp"
#include "coaching/prescriber_answer.hpp"
#include "coaching/type_signs.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <map>
#include <vector>

namespace tracewright {

namespace {

// Safety rule 8, our own rule.
constexpr double least_grams = 130;
constexpr int days_to_mean = 3;
constexpr int meals_of_a_whole_day = 3;

struct DayEaten {
    double grams = 0;
    int meals = 0;
    bool all_told = true;

    bool whole() const { return all_told && meals >= meals_of_a_whole_day; }
};

using Days = std::map<CivilDate, DayEaten>;
using Concerns = std::function<bool(Interval)>;

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

Interval whole_days(CivilDate from, const ZoneHistory& clock) {
    return {clock.day_of(from).from, clock.day_of(from + std::chrono::days{days_to_mean - 1}).to};
}

std::optional<RestrictedEating::LittleCarbohydrate> little_carbohydrate(const CareInput& input,
                                                                        const Concerns& concerns) {
    const Days days = days_of(input.diary, input.clock);
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
        if (whole && mean < least_grams && (!least || mean < least->grams_a_day) &&
            concerns(whole_days(date, input.clock))) {
            least = {date, mean};
        }
    }
    return least;
}

std::optional<RestrictedEating::LongGap> long_gap(const CareInput& input,
                                                  const Concerns& concerns) {
    std::optional<RestrictedEating::LongGap> longest;
    for (const GapWithoutFood& gap : gaps_without_food(input.diary, input.clock, input.as_of)) {
        if (!concerns(gap.interval())) {
            continue;
        }
        const int count = longest ? longest->count + 1 : 1;
        if (!longest || gap.to - gap.from > longest->gap.to - longest->gap.from) {
            longest = RestrictedEating::LongGap{gap, count};
        }
        longest->count = count;
    }
    return longest;
}

bool answered(const CareInput& input, AskedAbout about) {
    return answer_that_holds(input.facts.prescriber_answers, about, input.as_of, input.medicines,
                             input.clock) != nullptr;
}

// By the medicines of the days themselves, not by today's: what was eaten before an SGLT2
// inhibitor began was not beside it.
std::string why(const CareInput& input, const std::vector<Interval>& when) {
    bool may_be = false;
    for (const Interval& window : when) {
        const MedicineRisks risks = input.medicines.risks_in(window);
        if (risks.sglt2 && risks.answered) {
            return "beside an SGLT2 inhibitor";
        }
        may_be = may_be || risks.sglt2;
    }
    return may_be ? "while the list of medicines is not answered and counts as holding an SGLT2 "
                    "inhibitor"
                  : "while it is open whether the type has been checked";
}

std::string gap_words(const RestrictedEating::LongGap& seen, const ZoneHistory& clock) {
    const GapWithoutFood& gap = seen.gap;
    return fmt::format(
        "The diary has {} without food from {}{}{}", hours_and_minutes(gap.to - gap.from),
        day_and_time(clock.wall_time(gap.from), clock.writing()),
        seen.count > 1 ? fmt::format(", one of {} gaps over 12 h", seen.count) : std::string(),
        gap.over_a_day
            ? ", though other things were written on the days between: was nothing eaten?"
            : ".");
}

}  // namespace

RestrictedEating restricted_eating(const CareInput& input, const Concerns& concerns) {
    const Concerns asked = concerns ? concerns : [](Interval) { return true; };
    return {little_carbohydrate(input, asked), long_gap(input, asked)};
}

std::optional<RestrictedEatingToTell> restricted_eating_to_tell(const CareInput& input) {
    const bool another_type = !type_signs(input).empty();
    const RestrictedEating seen = restricted_eating(
        input, [&](Interval when) { return another_type || input.medicines.risks_in(when).sglt2; });
    RestrictedEatingToTell told;
    std::vector<Interval> when;
    if (seen.little_carbohydrate && !answered(input, AskedAbout::low_carbohydrate)) {
        const std::string how_much = numbers_turned_down(input.facts.cautions.eating)
                                         ? "little carbohydrate"
                                         : fmt::format("{:.0f} g of carbohydrate a day",
                                                       seen.little_carbohydrate->grams_a_day);
        told.seen = fmt::format("The diary has {} over three days from {}.", how_much,
                                full_date(seen.little_carbohydrate->from, input.clock.writing()));
        when.push_back(whole_days(seen.little_carbohydrate->from, input.clock));
    }
    if (seen.long_gap && !answered(input, AskedAbout::fasting)) {
        told.seen += (told.seen.empty() ? "" : " ") + gap_words(*seen.long_gap, input.clock);
        when.push_back(seen.long_gap->gap.interval());
    }
    if (when.empty()) {
        return std::nullopt;
    }
    told.from = when.front().from;
    told.seen += " This is " + why(input, when) + ".";
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
