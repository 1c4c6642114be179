#pragma once

#include "time/zone_history.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace tracewright {

/// A wall time of one row, made a moment.
struct PlacedTime {
    Instant at;
    enum class Kind : std::uint8_t {
        unique,
        by_order,  ///< in the repeated hour, told apart by the order of the file
        alone,     ///< in the repeated hour with nothing to tell: the first showing
        skipped    ///< never shown: no moment
    } kind = Kind::unique;
};

/// Places wall times in the order of the file (ascending or descending by what most steps do).
/// In a repeated hour the first showing is taken until times run backwards, then the second.
std::vector<PlacedTime> placed(std::span<const WallTime> walls, const ZoneHistory& zones);

/// Whether a device slept through a clock change within these times: a regular grid that runs
/// through a skipped hour, or once and without a gap through a repeated one. Such a file is read at
/// one offset.
bool clock_did_not_change(std::span<const WallTime> walls, const ZoneHistory& zones);

}  // namespace tracewright
