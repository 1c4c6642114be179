#pragma once

#include "findings/driver_fit.hpp"
#include "findings/question_findings.hpp"
#include "findings/question_rows.hpp"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace tracewright {

/// The rows of a question on their way into the regression.
struct GatheredRows {
    DriverRows rows;
    std::vector<CivilDate> dates;  ///< of the rows
    std::vector<bool> suspect;     ///< of the rows
    std::vector<std::string> adjusted_for;
    int ill = 0;
    int with_outcome = 0;
    int days = 0;                 ///< that the sensor saw, ill ones left out
    int meal_not_noted = 0;       ///< of them
    int nothing_eaten_noted = 0;  ///< of these
    std::map<Cause, int> noted;   ///< of those with an outcome
    /// Outcomes where the cause is not noted, and where it is.
    std::map<Cause, std::array<std::vector<double>, 2>> outcome_by_noted;
};

/// Those that can be used; all others go to `left_out` with the reason. An adjuster is used where
/// nine of ten rows with an outcome have it and it is no cause asked for.
GatheredRows gathered_rows(std::span<const QuestionRow> rows, std::span<const Cause> causes,
                           std::vector<LeftOut>& left_out);

std::vector<DriverSetting> driver_settings(std::span<const Cause> causes);

/// The same without what a suspect stretch lies in.
DriverRows without_suspect(const GatheredRows& gathered);

}  // namespace tracewright
