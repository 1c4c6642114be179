#pragma once

#include "time/instant.hpp"
#include "time/way_of_writing.hpp"
#include "time/zone_history.hpp"
#include "units/glucose.hpp"

#include <chrono>
#include <string>

namespace tracewright {

// Numbers and times as the trade says them, in English, whatever the machine's locale.

/// "16 h 50 min", "47 min", "3 h", "0 min"; to the nearest minute.
std::string hours_and_minutes(std::chrono::seconds time);

/// "02:40"; "2:40 am".
std::string clock_time(WallTime at, WayOfWriting way);

/// A full hour of the day, 0 to 24: "06:00", "24:00"; "6:00 am", "12:00 am" at both ends.
std::string full_hour(int hour, WayOfWriting way);

/// The same on a scale of hours: "06:00"; "6 am".
std::string hour_on_scale(int hour, WayOfWriting way);

/// "Tue 3 March"; "Tue March 3".
std::string day_words(CivilDate date, WayOfWriting way);

/// "Tue 3 Mar"; "Tue Mar 3": for a narrow column.
std::string short_day_words(CivilDate date, WayOfWriting way);

/// "Tue 3": where the month stands above.
std::string weekday_and_day(CivilDate date);

/// "Tue 3 March 2026", "Tue March 3, 2026": where the year matters.
std::string full_date(CivilDate date, WayOfWriting way);

/// "13 to 25 October 2021", "28 October to 3 November 2021", "3 March 2026"; "October 13 to 25,
/// 2021", "October 28 to November 3, 2021", "March 3, 2026".
std::string date_range(CivilDate from, CivilDate to, WayOfWriting way);

/// "Tue 3 March 02:40"; "Tue March 3, 2:40 am".
std::string day_and_time(WallTime at, WayOfWriting way);

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

/// How long before `now`: "just now" up to a minute, "35 minutes ago", "5 hours ago", from 48 hours
/// on the civil days of the client's clock, as the dates beside it count them: "16 days ago". What
/// lies after `now` is told as "in the future".
std::string age_words(Instant at, Instant now, const ZoneHistory& clock);

}  // namespace tracewright
