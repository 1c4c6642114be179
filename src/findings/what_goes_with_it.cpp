#include "findings/what_goes_with_it.hpp"

#include "findings/causes_to_ask.hpp"
#include "findings/hours_gained.hpp"
#include "findings/open_questions.hpp"
#include "findings/question_sentences.hpp"
#include "findings/special_days.hpp"
#include "findings/wording.hpp"
#include "responses/meal_kernel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <set>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr std::size_t most_leading = 3;

struct Standing {
    Outcome outcome;
    std::vector<Cause> causes;  // the first matter most
};

std::vector<Standing> standing_questions(bool foods_left_off) {
    std::vector<Standing> all = {
        // Not the hours from the last food to bed: bedtime is waking less hours slept, so with them
        // held equal less sleep means later food.
        {Outcome::fasting, {Cause::sleep, Cause::dinner_time, Cause::dinner_carbohydrate}},
        {Outcome::breakfast_rise, {Cause::meal_carbohydrate, Cause::walk_after}},
        {Outcome::lunch_rise, {Cause::meal_carbohydrate, Cause::walk_after}},
        {Outcome::dinner_rise, {Cause::meal_carbohydrate, Cause::walk_after}},
        {Outcome::hours_in_range, {Cause::movement, Cause::day_carbohydrate, Cause::weekend}},
    };
    if (foods_left_off) {
        for (Standing& standing : all) {
            std::erase_if(standing.causes, [](Cause cause) {
                return cause == Cause::dinner_carbohydrate || cause == Cause::meal_carbohydrate ||
                       cause == Cause::day_carbohydrate;
            });
        }
    }
    return all;
}

// What can be asked of the rows. Sleep and the hour of dinner travel together: where both are noted
// but too few rows hold both, neither is asked, for the innocent one would be blamed.
std::vector<Cause> asked_of(std::span<const QuestionRow> rows, const std::vector<Cause>& wanted) {
    std::vector<Cause> causes = causes_to_ask(rows, wanted);
    const auto holds = [](const std::vector<Cause>& list, Cause cause) {
        return std::ranges::find(list, cause) != list.end();
    };
    if (holds(wanted, Cause::dinner_time) && holds(causes, Cause::sleep) &&
        !holds(causes, Cause::dinner_time) &&
        !causes_to_ask(rows, std::array{Cause::dinner_time}).empty()) {
        std::erase(causes, Cause::sleep);
    }
    return causes;
}

// How far each row would go if those on the worse side were like the mean of the better side; in
// the outcome's unit, 0 for the others.
std::vector<double> moves(std::span<const QuestionRow> rows, Cause cause, double effect,
                          bool less_is_better) {
    const double slope = effect / facts_of(cause).change_size;
    std::vector<double> result = ways_to_better_side(rows, cause, (slope > 0) == less_is_better);
    for (double& way : result) {
        way *= slope;
    }
    return result;
}

double gained_by(const QuestionFinding& told, Outcome outcome, std::span<const QuestionRow> rows,
                 const TraceView& view) {
    if (told.result.gate != DriverGate::open) {
        return 0;
    }
    const bool hours = facts_of(outcome).unit == OutcomeUnit::hours;
    const auto move = moves(rows, told.cause, told.result.effect, !hours);
    std::vector<GlucoseShift> shifts;
    double sum = 0;
    double readable = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        readable += rows[i].outcome ? 1 : 0;
        sum += move[i];
        if (move[i] != 0) {
            shifts.push_back({rows[i].made_of, move[i]});
        }
    }
    if (hours) {
        return readable > 0 ? sum / readable : 0;
    }
    return hours_gained(view, shifts);
}

bool answered(const StandingQuestion& question) {
    return question.told.finding.answer == Answer::yes;
}

Finding none_answered(const std::vector<StandingQuestion>& ranked) {
    Finding finding;
    finding.code = none_answered_code;
    finding.question = "What goes with it?";
    finding.answer = Answer::cannot_tell;
    const auto asked = ranked.size();
    const auto no_difference =
        std::count_if(ranked.begin(), ranked.end(), [](const StandingQuestion& question) {
            return question.told.finding.answer == Answer::no_difference_worth_acting_on;
        });
    finding.sentence = asked == 1 ? "One question was asked of these days. "
                                  : fmt::format("{} questions were asked of these days. ", asked);
    finding.sentence +=
        no_difference == 0
            ? "These data can't tell yet."
            : fmt::format(
                  "{} made no difference worth acting on; of the rest these data can't tell.",
                  no_difference);
    finding.next = next_of_the_first_open(ranked);
    for (const StandingQuestion& question : ranked) {
        finding.evidence.used =
            std::max(finding.evidence.used, question.told.finding.evidence.used);
    }
    finding.evidence.used_what = "nights, days or meals";
    finding.evidence.method = fmt::format(
        "{} standing questions, chosen before looking, counted together by Holm", ranked.size());
    return finding;
}

void ask_questions(const ReviewInput& input, const TraceView& view, const CountedTrace& trace,
                   WhatGoesWithIt& result) {
    struct Asked {
        Outcome outcome;
        std::vector<QuestionRow> rows;
        std::vector<Cause> causes;
    };
    std::vector<Asked> all;
    std::size_t count = 0;
    for (const Standing& standing : standing_questions(input.foods_left_off)) {
        auto rows = question_rows(input, trace, standing.outcome, standing.causes);
        auto causes = asked_of(rows, standing.causes);
        count += causes.size();
        if (!causes.empty()) {
            all.push_back({standing.outcome, std::move(rows), std::move(causes)});
        }
    }
    if (count == 0) {
        result.none_because =
            "Nothing was asked: the diary tells too little of sleep, food and "
            "movement on at least ten nights, days or meals.";
        return;
    }
    for (const Asked& asked : all) {
        QuestionSettings settings;
        settings.asked_besides = count - asked.causes.size();
        QuestionAnswers answers =
            answers_from_rows(input, asked.outcome, asked.rows, asked.causes, settings);
        for (QuestionFinding& told : answers.findings) {
            StandingQuestion question{asked.outcome, std::move(told), 0, 0};
            question.hours_gained = gained_by(question.told, asked.outcome, asked.rows, view);
            question.certainty = question.told.result.beyond;
            result.questions.push_back(std::move(question));
        }
    }
    std::stable_sort(result.questions.begin(), result.questions.end(),
                     [](const StandingQuestion& a, const StandingQuestion& b) {
                         return answered(a) != answered(b) ? answered(a) : a.rank() > b.rank();
                     });
    // Of the weekend alone, which no diary tells, page 1 says nothing unless it is answered.
    const bool of_the_diary = std::ranges::any_of(
        result.questions,
        [](const StandingQuestion& question) { return question.told.cause != Cause::weekend; });
    if (of_the_diary && !answered(result.questions.front())) {
        result.leading.push_back(none_answered(result.questions));
    }
}

// The foods told apart as larger, each with the pairs in which it is.
using LargerFoods = std::map<std::string, std::vector<const FoodPair*>>;

LargerFoods larger_foods(const FoodComparison& foods) {
    LargerFoods larger;
    for (const FoodPair& pair : foods.different) {
        larger[pair.larger].push_back(&pair);
    }
    return larger;
}

// Their meals, moved to the mean of those they were told apart from; by food.
std::map<std::string, std::vector<GlucoseShift>> shifts_by_food(const ReviewInput& input,
                                                                const MealReport& meals,
                                                                const LargerFoods& larger) {
    const auto mean_of = [&](const std::string& food) {
        return std::find_if(meals.foods.foods.begin(), meals.foods.foods.end(),
                            [&](const FoodStanding& one) { return one.food == food; })
            ->mean;
    };
    // An amplitude stands at the peak; over three hours the mean of the kernel.
    const double over_three_hours = meal_kernel_area(180, meals.overlap.peak_minutes) / 180;
    const std::set<CivilDate> unlike = special_dates(input.diary, input.zones);
    std::map<std::string, std::vector<GlucoseShift>> shifts;
    for (const EatingOccasion& occasion : meals.occasions) {
        const auto found = larger.find(food_key(occasion.text()));
        if (found == larger.end() || unlike.contains(input.zones.date_at(occasion.at))) {
            continue;
        }
        double to = 0;
        for (const FoodPair* pair : found->second) {
            to += mean_of(pair->smaller) / static_cast<double>(found->second.size());
        }
        shifts[found->first].push_back(
            {{occasion.at, occasion.at + 3h}, (to - mean_of(found->first)) * over_three_hours});
    }
    return shifts;
}

// "a", "b" and "c"; of more than three how many others.
std::string smaller_named(const std::vector<const FoodPair*>& pairs) {
    constexpr std::size_t most_named = 3;
    const std::size_t named = std::min(pairs.size(), most_named);
    const std::size_t others = pairs.size() - named;
    std::string text;
    for (std::size_t i = 0; i < named; ++i) {
        const bool last = i + 1 == named && others == 0;
        text += fmt::format("{}\"{}\"", i == 0 ? "" : last ? " and " : ", ", pairs[i]->smaller);
    }
    return others == 0 ? text
                       : text + fmt::format(" and {} other meal{}", others, others == 1 ? "" : "s");
}

// "about 20 min a day out of range"; empty where it is less than five minutes.
std::string about_a_day(double hours) {
    const auto minutes = std::lround(hours * 60 / 5) * 5;
    return minutes < 5 ? ""
                       : fmt::format("about {} a day out of range",
                                     hours_and_minutes(std::chrono::minutes{minutes}));
}

// What the ranking counts beside the food named: all that were told apart as larger.
std::string all_pairs(std::size_t pairs, double hours) {
    const std::string come_to = about_a_day(hours);
    return fmt::format(" In all {} pairs of meals are told apart{}.", pairs,
                       come_to.empty() ? "" : "; together they come to " + come_to);
}

Finding meals_finding(const ReviewInput& input, const MealReport& meals, const std::string& food,
                      const std::vector<const FoodPair*>& pairs) {
    Finding finding;
    finding.code = meals_code;
    finding.question = "Do meals differ for this client?";
    finding.answer = Answer::yes;
    finding.sentence =
        fmt::format("After \"{}\" glucose rose more than after {}.", food, smaller_named(pairs));
    finding.evidence.used = static_cast<int>(meals.occasions.size());
    finding.evidence.used_what = "meals";
    finding.evidence.seed = input.seed;
    finding.evidence.adjusted_for = meals.foods.adjusted_for;
    finding.evidence.method =
        "neighbouring meals and the time of day taken off, foods shrunken together; a pair is told "
        "apart from a probability of 0.985 on";
    finding.next = {
        NextStep::run_trial,
        fmt::format("Eaten by lot on like days, \"{}\" and {} would show whether it is the food.",
                    food,
                    pairs.size() == 1 ? "\"" + pairs.front()->smaller + "\""
                                      : "one of the meals named after it")};
    return finding;
}

void weigh_meals(const ReviewInput& input, const TraceView& view, WhatGoesWithIt& result) {
    const FoodComparison& foods = result.meals->foods;
    result.meals_certainty = 1;
    for (const FoodPair& pair : foods.different) {
        result.meals_certainty = std::min(result.meals_certainty, pair.probability);
    }
    const LargerFoods larger = larger_foods(foods);
    auto by_food = shifts_by_food(input, *result.meals, larger);
    std::vector<GlucoseShift> all;
    for (const auto& [food, shifts] : by_food) {
        all.insert(all.end(), shifts.begin(), shifts.end());
    }
    result.meals_hours_gained = hours_gained(view, all);

    const auto most = std::max_element(
        larger.begin(), larger.end(),
        [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
    Finding finding = meals_finding(input, *result.meals, most->first, most->second);
    finding.sentence += amounts_to(hours_gained(view, by_food[most->first]));
    if (larger.size() > 1) {
        finding.sentence += all_pairs(foods.different.size(), result.meals_hours_gained);
    }
    result.leading.push_back(std::move(finding));
}

}  // namespace

Next next_of_the_first_open(const std::vector<StandingQuestion>& ranked) {
    const auto open = std::ranges::find_if(ranked, [](const StandingQuestion& one) {
        return one.told.finding.answer == Answer::cannot_tell &&
               !one.told.finding.next.sentence.empty();
    });
    if (open == ranked.end()) {
        return {};
    }
    const Finding& finding = open->told.finding;
    return {finding.next.step, finding.question + " " + finding.next.sentence};
}

std::string amounts_to(double hours) {
    const std::string come_to = about_a_day(hours);
    return come_to.empty() ? ""
                           : fmt::format(" Over these days that difference comes to {}.", come_to);
}

WhatGoesWithIt what_goes_with_it(const ReviewInput& input) {
    WhatGoesWithIt result;
    if (input.goals.kind == GoalKind::pregnancy) {
        result.none_because =
            "Nothing is asked here in pregnancy, while planning one or when unsure: the maternity "
            "or diabetes clinic leads.";
        return result;
    }
    const CountedTrace trace = trace_of_questions(input);
    if (trace.readings.empty()) {
        return result;
    }
    const TraceView view = trace.view();
    ask_questions(input, view, trace, result);
    std::vector<std::pair<double, Finding>> ranked;
    for (const StandingQuestion& question : result.questions) {
        if (answered(question)) {
            Finding finding = question.told.finding;
            finding.sentence += amounts_to(question.hours_gained);
            ranked.emplace_back(question.rank(), std::move(finding));
        }
    }
    const bool meals =
        std::any_of(input.diary.begin(), input.diary.end(),
                    [](const DiaryEntry& one) { return one.kind == DiaryKind::meal; });
    if (meals && !input.foods_left_off) {
        result.meals = meal_report(input);
        result.meal_sentences = food_sentences(result.meals->foods, input.unit);
        if (!result.meals->foods.different.empty()) {
            weigh_meals(input, view, result);
            ranked.emplace_back(result.meals_hours_gained * result.meals_certainty,
                                std::move(result.leading.back()));
            result.leading.pop_back();
        }
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (auto& [rank, finding] : ranked) {
        if (result.leading.size() < most_leading) {
            result.leading.push_back(std::move(finding));
        }
    }
    return result;
}

}  // namespace tracewright
