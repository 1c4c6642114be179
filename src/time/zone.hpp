#pragma once

#include "time/instant.hpp"

#include <tl/expected.hpp>

#include <chrono>
#include <string>
#include <string_view>

namespace date {
class time_zone;
}

namespace tracewright {

/// What one wall time is in a zone: one moment, two (the repeated hour), or none (the skipped one).
struct WallResolution {
    enum class Kind { unique, repeated, skipped };
    Kind kind = Kind::unique;
    /// unique: the moment, twice. repeated: the earlier and the later one.
    /// skipped: the moment at which the clock jumped, twice.
    Instant first;
    Instant second;
};

/// A rule that tells wall times from moments. Cheap to copy.
class Zone {
  public:
    /// By IANA name ("Europe/Berlin"); links are followed to the canonical name.
    /// Error: a sentence that names what was asked for. Abbreviations are not zones.
    static tl::expected<Zone, std::string> named(std::string_view iana_name);
    /// A clock of unknown zone that never changes: its wall time is taken for UTC, and said so.
    static Zone floating();
    /// A constant offset without daylight-saving rules.
    static Zone fixed(std::chrono::seconds east_of_utc);

    /// The IANA name, "floating", or "UTC+hh:mm".
    const std::string& name() const { return name_; }
    bool is_floating() const { return floating_; }
    bool has_rules() const { return rules_ != nullptr; }

    std::chrono::seconds offset_at(Instant at) const;
    WallTime wall_time(Instant at) const;
    WallResolution resolve(WallTime wall) const;

    /// The stretch round `at` over which the offset is constant. Fixed and floating: all of time.
    Interval constant_offset_round(Instant at) const;

    bool operator==(const Zone& other) const { return name_ == other.name_; }

  private:
    Zone(std::string name, const date::time_zone* rules, std::chrono::seconds offset, bool floating)
        : name_(std::move(name)), rules_(rules), offset_(offset), floating_(floating) {}

    std::string name_;
    const date::time_zone* rules_;  // owned by the zone library for the life of the program
    std::chrono::seconds offset_;
    bool floating_;
};

/// The version of the system's zone data ("2025b"), or "unknown" if the system does not say.
std::string zone_data_version();

}  // namespace tracewright
