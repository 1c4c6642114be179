#pragma once

#include "time/zone_history.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace tracewright {

/// Resolves wall times with one look-up per stretch of constant offset.
class WallResolver {
  public:
    explicit WallResolver(const ZoneHistory& zones) : zones_(zones) {}

    WallResolution at(WallTime wall) {
        if (wall >= plain_from_ && wall < plain_to_) {
            const Instant moment = Instant{wall.time_since_epoch()} - offset_;
            return {WallResolution::Kind::unique, moment, moment};
        }
        return looked_up(wall);
    }

  private:
    WallResolution looked_up(WallTime wall);

    const ZoneHistory& zones_;
    WallTime plain_from_ = WallTime::max();
    WallTime plain_to_ = WallTime::min();
    std::chrono::seconds offset_{0};
};

/// Whether the clock changes, or may have been left unchanged, between two wall times.
bool clock_changes_between(WallTime first, WallTime last, const ZoneHistory& zones);

/// A wall time of one row, made a moment.
struct PlacedTime {
    Instant at;
    enum class Kind : std::uint8_t {
        unique,
        by_order,  ///< in the repeated hour, told apart by the order of the file
        alone,     ///< in the repeated hour with nothing that tells: the first showing
        skipped    ///< never shown: no moment
    } kind = Kind::unique;
};

/// Places wall times by the zones. Rows of a repeated hour that follow one another are parted into
/// its two showings by their order (`second_showing_from`), forward or backward as the file runs
/// there; where the rows about them run to and fro, or nothing tells, all are of the first.
std::vector<PlacedTime> placed(std::span<const WallTime> walls, const ZoneHistory& zones);

/// Whether a device slept through a clock change within these times: a regular grid that runs
/// through a skipped hour, or once and without a gap through a repeated one. Such a file is read at
/// one offset.
bool clock_did_not_change(std::span<const WallTime> walls, const ZoneHistory& zones);

}  // namespace tracewright
