#pragma once

#include "time/instant.hpp"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>

namespace tracewright {

enum class DateOrder : std::uint8_t { year_first, day_first, month_first };

/// A date and a time of day as written, before anyone decides what "03/04" is.
struct WrittenTime {
    bool has_date = false;
    bool has_clock = false;
    bool year_first = false;        ///< or a month by name: no order to decide
    int year = 0;                   ///< two digits become 2000 to 2099
    int first = 0;                  ///< day or month as written first; year_first: month
    int second = 0;                 ///< the other; year_first: day
    std::chrono::seconds clock{0};  ///< after midnight; 24:00 is a day
    bool twelve_hour = false;       ///< AM or PM was written
    bool fraction = false;          ///< a part of a second was cut off
    std::optional<std::chrono::seconds> offset;  ///< from UTC, where one is written
    bool utc = false;  ///< Z, UTC, GMT or -00:00: what the clock beside it showed is not told
    std::string zone;  ///< RFC 9557 "[Europe/Berlin]", without brackets
    bool zone_critical = false;      ///< "[!...]"
    std::string abbreviation;        ///< "CET": of which zone it is depends on the place
    std::optional<Instant> instant;  ///< Unix seconds or milliseconds: no zone needed

    /// Whether the date fits the order: 13 is no month.
    bool fits(DateOrder order) const;
    /// The date by an order (ignored if it has none to decide); empty if there is no such day.
    std::optional<CivilDate> date(DateOrder order) const;
};

}  // namespace tracewright
