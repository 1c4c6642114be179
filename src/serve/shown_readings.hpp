#pragma once

#include "trace/reading.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace tracewright {

/// How much of a wear is told: each reading, or of each hour the lowest and the highest, which is
/// all that a sheet of many weeks has room for.
enum class Detail : std::uint8_t { each_reading, extremes_of_hours };

struct ShownReading {
    Instant at;
    std::int32_t level = 0;  ///< hundredths of the unit asked for
    Limit limit = Limit::none;
    /// Where readings are missing before this one: from when, as the one before stands no longer.
    std::optional<Instant> missing_from;
};

/// What is told of one wear's readings, in the order of time. Extremes are readings at their own
/// instants, those of an hour that a gap parts on both sides of it; of equals the first, but one
/// beyond the sensor's limit before a level. So neither the lowest nor a gap is lost.
std::vector<ShownReading> shown_readings(std::span<const Reading> readings, GlucoseUnit unit,
                                         Detail detail);

}  // namespace tracewright
