#pragma once

#include "findings/driver_fit.hpp"
#include "findings/finding.hpp"
#include "findings/published_effects.hpp"
#include "findings/question_rows.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// One cause asked of one outcome, answered.
struct QuestionFinding {
    Finding finding;
    Cause cause{};
    DriverResult result;
    OthersSay others;
    std::optional<NormalTelling> both;  ///< others' prior and this client's nights together
    double scan_p = 1;                  ///< of a scan: adjusted by Benjamini & Hochberg
};

/// A night, day or meal that was left out.
struct LeftOut {
    CivilDate date;
    std::string why;
};

struct QuestionAnswers {
    Outcome outcome{};
    bool scan = false;
    double worth = 0;  ///< mg/dL or hours
    int rows = 0;      ///< used
    int of_days = 0;  ///< that the sensor saw, where the meal asked of is not noted on some; else 0
    std::size_t asked_together = 0;  ///< questions that Holm counts
    std::vector<LeftOut> left_out;
    std::vector<QuestionFinding> findings;
    std::optional<DriverFit> fit;  ///< of named questions
};

struct QuestionSettings {
    std::optional<double> worth;  ///< mg/dL or hours; empty: the outcome's own
    /// Further questions asked of the same days at the same time: Holm counts them, as if none of
    /// them had an answer.
    std::size_t asked_besides = 0;
};

/// The trace that questions of these wears are read from.
CountedTrace trace_of_questions(const ReviewInput& input);

/// Named causes, all together in one regression. `causes` without repeats, each allowed for the
/// outcome; an input without readings answers 'can't tell' everywhere.
QuestionAnswers answer_questions(const ReviewInput& input, Outcome outcome,
                                 std::span<const Cause> causes,
                                 const QuestionSettings& settings = {});

/// The same of rows that were gathered before (`question_rows` with these causes among its own).
QuestionAnswers answers_from_rows(const ReviewInput& input, Outcome outcome,
                                  std::span<const QuestionRow> rows, std::span<const Cause> causes,
                                  const QuestionSettings& settings = {});

/// Every cause the diary tells of, each on its own beside wear, weekend and the value before;
/// 'worth a trial' at most, never an answer.
QuestionAnswers scan_causes(const ReviewInput& input, Outcome outcome,
                            const QuestionSettings& settings = {});

}  // namespace tracewright
