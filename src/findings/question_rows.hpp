#pragma once

#include "findings/question_words.hpp"
#include "findings/review_input.hpp"
#include "trace/counted_trace.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// One night, day or meal of a question.
struct QuestionRow {
    CivilDate date;                  ///< of the morning for a night
    std::size_t wear = 0;            ///< index into the input's wears
    std::optional<double> outcome;   ///< mg/dL or hours
    std::string none_because;        ///< why there is no outcome
    Interval made_of{};              ///< the stretch the outcome is read from
    std::map<Cause, double> causes;  ///< those that are known
    std::map<std::string, double> adjusters;
    bool suspect = false;              ///< a suspect stretch lies in what the outcome is made of
    bool ill = false;                  ///< illness is noted on the day or the day before
    bool meal_not_noted = false;       ///< of a meal's outcome: no meal of that name is noted
    bool nothing_eaten_noted = false;  ///< nor any other food on that day
};

/// All nights, days or meals that the input's wears touch, in order of time, with the outcome and
/// the causes asked for. A day of which the readings hold less than an hour, at their beginning or
/// end, is no day that is left out.
std::vector<QuestionRow> question_rows(const ReviewInput& input, const CountedTrace& trace,
                                       Outcome outcome, std::span<const Cause> causes);

}  // namespace tracewright
