#pragma once

#include "findings/meal_report.hpp"
#include "findings/question_findings.hpp"
#include "findings/review_input.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// One of the questions a review asks by itself, answered.
struct StandingQuestion {
    Outcome outcome{};
    QuestionFinding told;
    /// What the difference amounts to in hours in range a day over these days, were the nights,
    /// days or meals on its worse side like those on the other; never more than one `change` each.
    double hours_gained = 0;
    double certainty = 0;  ///< probability that the difference is worth acting on

    double rank() const { return hours_gained * certainty; }
};

/// What a review says of causes and meals beside its measures.
struct WhatGoesWithIt {
    std::string none_because;  ///< why nothing was asked; empty if something was
    /// Asked together and counted together by Holm: answered ones first, then by hours gained times
    /// certainty.
    std::vector<StandingQuestion> questions;
    std::optional<MealReport> meals;          ///< empty where foods are left off, or without a meal
    std::vector<std::string> meal_sentences;  ///< of foods compared
    double meals_hours_gained = 0;            ///< as above, of the foods told apart
    double meals_certainty = 0;
    std::vector<Finding> leading;  ///< for page 1, by hours gained times certainty; at most three
};

/// " Over these days that difference comes to about 20 min a day out of range."; empty where it is
/// less than five minutes.
std::string amounts_to(double hours);

/// The standing questions: fasting with sleep, dinner's carbohydrate and the time from the last
/// food to bed; the rise after each main meal with its carbohydrate and movement after; hours in
/// range with movement, the day's carbohydrate and the weekend. Of each outcome as many as its
/// nights, days or meals allow (one for six), in that order, and only causes noted on 70 % of them.
/// Chosen before looking at any glucose. In pregnancy nothing is asked: the clinic leads (safety
/// rule 11).
WhatGoesWithIt what_goes_with_it(const ReviewInput& input);

}  // namespace tracewright
