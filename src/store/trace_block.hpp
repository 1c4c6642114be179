#pragma once

#include "time/instant.hpp"
#include "trace/reading.hpp"

#include <tl/expected.hpp>

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// Days since 1970-01-01 by UTC: what a block of readings is kept under. Not a civil day.
using UtcDay = std::chrono::sys_days;

inline UtcDay utc_day_of(Instant at) {
    return std::chrono::floor<std::chrono::days>(at);
}

using Bytes = std::vector<std::uint8_t>;

/// Packs the readings of one wear and one UTC day (ascending, all within it) for both backends: a
/// byte of version, a zstd frame of what the first reading is and of the planes of bytes in which
/// the others differ from their neighbours, and a checksum over both. About half a byte to a byte a
/// reading. The same readings give the same bytes with the same zstd. Format:
/// docs/formats/practice.md.
/// std::invalid_argument for no readings, or some outside the day or out of order (a programmer's
/// mistake).
Bytes trace_block(UtcDay day, std::span<const Reading> readings);

/// Appends the readings of a block that was packed for `day`. Error: a sentence; then `readings`
/// is as it was. Never reads past the block or asks for memory beyond a day of one-second readings,
/// whatever the bytes are.
tl::expected<void, std::string> unpack_trace_block(std::span<const std::uint8_t> block, UtcDay day,
                                                   std::vector<Reading>& readings);

}  // namespace tracewright
