#pragma once

#include "time/instant.hpp"
#include "units/glucose.hpp"

#include <chrono>
#include <cstdint>

namespace tracewright {

/// Whether a reading is a level, or 'LOW' or 'HIGH': beyond the sensor's limit, whose value it
/// then carries. A plain number at the limit is a level like any other.
enum class Limit : std::uint8_t { none, below, above };

/// One value of one sensor. 16 bytes, so that a year of minutes is a scan and not a wait.
class Reading {
  public:
    Reading() = default;
    /// `interval` is what its sensor reports at, 1 s to 18 h.
    Reading(Instant at_, Glucose value, std::chrono::seconds interval, Limit limit = Limit::none,
            bool implausible = false)
        : at(at_),
          hundredths_(value.hundredths),
          interval_s_(static_cast<std::uint16_t>(interval.count())),
          unit_(static_cast<std::uint16_t>(value.unit) & 1U),
          limit_(static_cast<std::uint16_t>(limit) & 3U),
          implausible_(implausible ? 1U : 0U) {}

    Instant at;

    Glucose value() const { return {hundredths_, static_cast<GlucoseUnit>(unit_)}; }
    std::int32_t hundredths() const { return hundredths_; }
    GlucoseUnit unit() const { return static_cast<GlucoseUnit>(unit_); }
    std::chrono::seconds interval() const { return std::chrono::seconds{interval_s_}; }
    Limit limit() const { return static_cast<Limit>(limit_); }
    bool censored() const { return limit_ != 0; }

    /// Outside what glucose can be (interchange 4.4 row 15): out of the measures until confirmed,
    /// still read by whatever decides whom to call.
    bool implausible() const { return implausible_ != 0; }

    void set_interval(std::chrono::seconds interval) {
        interval_s_ = static_cast<std::uint16_t>(interval.count());
    }

    bool operator==(const Reading&) const = default;

  private:
    std::int32_t hundredths_ = 0;
    std::uint16_t interval_s_ = 0;
    std::uint16_t unit_ : 1 = 0;
    std::uint16_t limit_ : 2 = 0;
    std::uint16_t implausible_ : 1 = 0;
};

static_assert(sizeof(Reading) == 16);

}  // namespace tracewright
