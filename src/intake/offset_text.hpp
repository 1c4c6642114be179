#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace tracewright {

/// A distance from UTC as written.
struct WrittenOffset {
    std::chrono::seconds east{0};
    bool utc = false;  ///< Z, UTC, GMT or -00:00: what the clock beside it showed is not told
};

/// Takes the offset that `text` begins with: Z, "+01:00", "-0500", "+1", each of these behind UTC
/// or GMT, or one of these alone. Empty, and nothing taken, if there is none up to 15 hours.
std::optional<WrittenOffset> take_offset(std::string_view& text);

/// The same of a whole cell (plain and trimmed) in a column of offsets, where hours need no sign.
std::optional<WrittenOffset> offset_in_cell(std::string_view text);

/// The offset that a title says its times have: "Time (UTC)", "timestamp_utc", "Zeit GMT+1".
std::optional<WrittenOffset> offset_in_title(std::string_view title);

}  // namespace tracewright
