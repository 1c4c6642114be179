#pragma once

#include "time/instant.hpp"
#include "units/glucose.hpp"

#include <chrono>
#include <string>

namespace tracewright {

// Numbers and times as the trade says them, in English, whatever the machine's locale.

/// "16 h 50 min", "47 min", "3 h", "0 min"; to the nearest minute.
std::string hours_and_minutes(std::chrono::seconds time);

/// "02:40".
std::string clock_time(WallTime at);

/// "Tue 3 March".
std::string day_words(CivilDate date);

/// "Tue 3 March 2026": where the year matters.
std::string full_date(CivilDate date);

/// "13 to 25 October 2021", "28 October to 3 November 2021", "3 March 2026".
std::string date_range(CivilDate from, CivilDate to);

/// "Tue 3 March 02:40".
std::string day_and_time(WallTime at);

/// "142 mg/dL", "7.9 mmol/L": rounded as printed.
std::string glucose_words(double value, GlucoseUnit unit);

/// "142" or "7.9": the number alone.
std::string glucose_number(double value, GlucoseUnit unit);

/// "57 %"; under 10 with one decimal: "0.4 %". Never rounds something to 0 or all to 100:
/// "under 0.1 %", "over 99.9 %".
std::string percent_words(double percent);

/// An interval whose ends are worded: "136 to 149 mg/dL". `unit`, if both end in it, is said once.
/// Ends that round alike give "about 142 mg/dL": no interval reads as if it had no width.
std::string from_to_words(const std::string& from, const std::string& to,
                          const std::string& unit = "");

/// The same within a sentence: "between 136 mg/dL and 149 mg/dL", "at about 142 mg/dL".
std::string between_words(const std::string& from, const std::string& to);

/// How long ago: "just now" up to a minute, "35 minutes ago", "5 hours ago", "16 days ago".
/// Negative ages (a reading from the future) are told as "in the future".
std::string age_words(std::chrono::seconds age);

}  // namespace tracewright
