#pragma once

#include "findings/question_rows.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// Of `wanted`, in that order, what can be asked of these rows together: noted on 70 % of the
/// readable ones and varying, ten rows and six a cause. Decided without looking at how large any
/// outcome is.
std::vector<Cause> causes_to_ask(std::span<const QuestionRow> rows, std::span<const Cause> wanted);

/// By how far the cause of each row would go if those on the other side of the middle were like the
/// mean of the better side, by at most one `change` of the cause; 0 for the others, those of ill
/// days among them. In the cause's unit; `less_of_it`: the better side is the lower one.
std::vector<double> ways_to_better_side(std::span<const QuestionRow> rows, Cause cause,
                                        bool less_of_it);

}  // namespace tracewright
