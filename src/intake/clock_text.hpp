#pragma once

#include "intake/written_time.hpp"

#include <optional>
#include <string_view>

namespace tracewright {

/// Reads ISO 8601 / RFC 3339 / RFC 9557, day.month.year and the like with any of . / - between,
/// month names (English, German, French, Spanish), 12- and 24-hour clocks, basic format
/// (20260302T0815), Unix seconds and milliseconds (10 or 13 digits). `text` plain and trimmed.
/// Empty for anything else, 13:05 PM and 25:00 among it.
std::optional<WrittenTime> written_time(std::string_view text);

/// The same, and with a zone's abbreviation behind date and clock ("2026-03-02 08:00 CET"), for who
/// refuses that by its name.
std::optional<WrittenTime> time_with_abbreviation(std::string_view text);

}  // namespace tracewright
