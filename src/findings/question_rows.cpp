#include "findings/question_rows.hpp"

#include "findings/cause_values.hpp"
#include "findings/special_days.hpp"

#include <algorithm>

namespace tracewright {

namespace {

OutcomeValue outcome_of(Outcome outcome, const DiaryOfDay& today, const ReviewInput& input,
                        std::span<const EatingOccasion> occasions, const TraceView& trace) {
    switch (outcome) {
        case Outcome::fasting:
            return fasting_glucose(today, input.diary, trace);
        case Outcome::overnight:
            return overnight_glucose(today, trace, input.zones);
        case Outcome::dawn_rise:
            return dawn_rise(today, trace, input.zones);
        case Outcome::breakfast_rise:
        case Outcome::lunch_rise:
        case Outcome::dinner_rise:
            return meal_rise(*facts_of(outcome).slot, today.day, occasions, trace, input.zones);
        default:
            return day_value(outcome, today.day, trace, input.zones);
    }
}

bool ill(const DiaryOfDay& today) {
    const auto tells = [](const DiaryEntry* entry) { return entry->kind == DiaryKind::illness; };
    return std::any_of(today.before.begin(), today.before.end(), tells) ||
           std::any_of(today.within.begin(), today.within.end(), tells);
}

// Whether the sensor was on at any time of the day, or of the six hours before the day of a night;
// a day that the readings as a whole only graze is none.
bool touched(const TraceView& trace, const CivilDay& day, Outcome outcome) {
    const bool night = facts_of(outcome).of == OutcomeOf::night;
    const Instant from = day.from - std::chrono::hours{night ? 6 : 0};
    const auto first =
        std::lower_bound(trace.readings.begin(), trace.readings.end(), from,
                         [](const Reading& reading, Instant at) { return reading.at < at; });
    if (first == trace.readings.end() || first->at >= day.to) {
        return false;
    }
    const Reading& last = trace.readings.back();
    const Interval held =
        intersection({trace.readings.front().at, last.at + last.interval()}, {from, day.to});
    return held.to - held.from >= std::chrono::hours{1};
}

bool nothing_eaten_noted(std::span<const EatingOccasion> occasions, const CivilDay& day,
                         const ZoneHistory& zones) {
    return std::ranges::none_of(
        occasions, [&](const EatingOccasion& one) { return zones.date_at(one.at) == day.date; });
}

const EatingOccasion* occasion_at(std::span<const EatingOccasion> occasions, Instant at) {
    for (const EatingOccasion& occasion : occasions) {
        if (occasion.at == at) {
            return &occasion;
        }
    }
    return nullptr;
}

}  // namespace

std::vector<QuestionRow> question_rows(const ReviewInput& input, const CountedTrace& trace,
                                       Outcome outcome, std::span<const Cause> causes) {
    std::vector<QuestionRow> rows;
    if (trace.readings.empty()) {
        return rows;
    }
    const std::vector<EatingOccasion> occasions = eating_occasions(input.diary, input.zones);
    const auto special = special_days(input.diary, input.zones);
    const TraceView view = trace.view();
    std::vector<Mark> marks;
    for (const Wear& wear : input.wears) {
        for (Mark& mark : suspect_stretches(wear, input.suspect)) {
            marks.push_back(std::move(mark));
        }
    }
    for (const CivilDay& day : input.zones.days(trace.window)) {
        if (!touched(view, day, outcome)) {
            continue;  // between two wears
        }
        const DiaryOfDay today = diary_of_day(input.diary, day, input.zones);
        OutcomeValue value = outcome_of(outcome, today, input, occasions, view);
        QuestionRow row;
        row.date = day.date;
        row.outcome = value.value;
        row.none_because = std::move(value.none_because);
        row.made_of = value.made_of;
        row.adjusters = std::move(value.adjusters);
        row.wear = trace.wear_at(row.outcome ? value.made_of.from : day.from);
        row.ill =
            ill(today) || std::ranges::find(special, day.date, &SpecialDay::date) != special.end();
        row.suspect = row.outcome && std::any_of(marks.begin(), marks.end(), [&](const Mark& mark) {
                          const Interval shared = intersection(mark.stretch, value.made_of);
                          return shared.from < shared.to;
                      });
        if (facts_of(outcome).of == OutcomeOf::meal) {
            row.meal_not_noted = !row.outcome && value.meal_not_noted;
            row.nothing_eaten_noted =
                row.meal_not_noted && nothing_eaten_noted(occasions, day, input.zones);
        }
        const EatingOccasion* occasion = row.outcome && facts_of(outcome).of == OutcomeOf::meal
                                             ? occasion_at(occasions, value.made_of.from)
                                             : nullptr;
        for (const Cause cause : causes) {
            if (const auto known = cause_value(cause, outcome, today, occasion, input.diary,
                                               occasions, input.zones)) {
                row.causes[cause] = *known;
            }
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace tracewright
