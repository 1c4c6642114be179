#pragma once

#include "time/zone.hpp"

#include <chrono>
#include <optional>
#include <string>

namespace tracewright {

/// The zones that rows name behind their times; the last is kept, as most rows name one.
class NamedZone {
  public:
    /// How far from UTC a zone's clock was at a moment, or at a wall time that it showed once.
    /// `name`: an IANA name, or an offset as written. Empty for no known zone.
    std::optional<std::chrono::seconds> offset_in(const std::string& name, WallTime wall,
                                                  std::optional<Instant> at);

  private:
    std::string name_;
    std::optional<Zone> zone_;
};

}  // namespace tracewright
