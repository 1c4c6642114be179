#pragma once

#include "findings/question_findings.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// "nights", "days" or the slot's plural: what the rows of an outcome are called.
std::string rows_called(Outcome outcome, int count);

/// "Is fasting glucose different with two hours less sleep?"
std::string question_sentence(Outcome outcome, Cause cause);

/// "12 mg/dL", "0.7 mmol/L", "1.5 h": a size of the outcome (mg/dL or hours) in the unit shown.
std::string size_words(double size, Outcome outcome, GlucoseUnit unit);

/// "12 mg/dL higher", "0.7 mmol/L lower", "1.5 h more"; "about the same" where it rounds to 0.
std::string difference_words(double difference, Outcome outcome, GlucoseUnit unit);
/// "95 % interval from 4 mg/dL lower to 19 mg/dL higher"; an end that rounds to 0 is "the same".
std::string interval_words(const std::array<double, 2>& interval, Outcome outcome,
                           GlucoseUnit unit);

/// Up to five dates, "Tue 3 March, ...", on which the two most alike causes part; empty without
/// any.
std::string dates_that_part(const DriverFit& fit, const std::vector<CivilDate>& dates,
                            WayOfWriting way);

/// What is said to the coach of one driver; `dates` of the fit's rows in order. `seldom_noted`: on
/// too few of the days for an answer.
std::string answer_sentence(const QuestionAnswers& answers, const DriverFit& fit,
                            std::size_t driver, std::span<const Cause> causes,
                            const std::vector<CivilDate>& dates, GlucoseUnit unit, WayOfWriting way,
                            bool seldom_noted = false);
std::string client_sentence(Outcome outcome, Cause cause, const DriverResult& result);
Next next_step(Outcome outcome, Cause cause, const DriverResult& result);

/// Whether a trial may draw this cause by lot. Drink, tension and the calendar are nobody's to
/// draw: of these more days noted tell.
bool can_be_drawn_by_lot(Cause cause);
/// What a scan's finding that stands out from chance leads to.
Next next_of_a_scan(Outcome outcome, Cause cause);

/// In pregnancy, while planning one or when unsure a trial is none of ours to offer (safety rule
/// 11): the clinic leads instead. Else `next` as it is.
Next unless_in_pregnancy(Next next, const Goals& goals);

}  // namespace tracewright
