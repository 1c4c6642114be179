#pragma once

#include "diary/diary_entry.hpp"
#include "findings/finding.hpp"
#include "findings/first_review.hpp"
#include "time/zone_history.hpp"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace tracewright {

/// A day that is not like others, and why.
struct SpecialDay {
    CivilDate date;
    std::string why;  ///< "illness noted", "cortisone (prednisolone)"
};

/// Days with illness noted, and days of a glucocorticoid (by the table of medicines, or called
/// cortisone or steroid, and not denied) with the day after it: its effect lasts a day or more
/// (from memory). Ascending, each day once for each reason.
std::vector<SpecialDay> special_days(const Diary& diary, const ZoneHistory& zones);

/// Their dates: a rise on one is put down to no food and no habit.
std::set<CivilDate> special_dates(const Diary& diary, const ZoneHistory& zones);

/// Both answers: hours in range with those days of the window and without them; a rise on them is
/// put down to no food and no habit. Empty without any.
std::optional<Finding> special_days_finding(const FirstReview& review);

}  // namespace tracewright
