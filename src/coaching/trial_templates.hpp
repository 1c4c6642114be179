#pragma once

#include "coaching/gates.hpp"
#include "findings/question_words.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace tracewright {

/// A question on which published findings disagree or are few, ready as a trial: two arms on days
/// that lie next to each other.
struct TrialTemplate {
    const char* code;      ///< on the command line and in files
    const char* question;  ///< in the coach's words
    const char* a;         ///< the arm that is tried: what the client does
    const char* b;         ///< what it is compared with
    Outcome outcome;
    Proposed proposed;         ///< what the riskier arm has the client do: which gates it meets
    int free_days;             ///< between the two days of a block, so that nothing carries over
    const char* carries_over;  ///< said before starting
    std::optional<Cause> seen_by;  ///< the diary's own sign that A was done (yes or no)
    const char* keep_alike;        ///< what narrows the answer
    const char* a_in_short;        ///< for a day of the client's calendar page
    const char* b_in_short;
};

std::span<const TrialTemplate> trial_templates();
/// Null if there is none of this code.
const TrialTemplate* trial_template_called(std::string_view code);

/// "night", "day" or the meal's name: what one arm is done on.
const char* unit_of(const TrialTemplate& made_from);

}  // namespace tracewright
