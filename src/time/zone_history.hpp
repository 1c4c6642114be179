#pragma once

#include "time/instant.hpp"
#include "time/way_of_writing.hpp"
#include "time/zone.hpp"

#include <vector>

namespace tracewright {

/// One civil day of a client: from the moment its date first shows until the next date first shows.
/// 23 or 25 hours across a clock change, 18 or 30 on a day of travel. After a flight back across
/// midnight the clock shows yesterday's date again; that time stays in the day that had begun.
struct CivilDay {
    CivilDate date;
    Instant from;
    Instant to;

    Interval interval() const { return {from, to}; }
    std::chrono::seconds length() const { return to - from; }
};

/// The zones a client lived in, in order: the home zone, then each change from a moment on; and how
/// the client's dates and times are written.
class ZoneHistory {
  public:
    explicit ZoneHistory(Zone home);

    /// From `from` on the client's clock runs by `zone`. Changes come in ascending order of time;
    /// std::invalid_argument otherwise (a programmer's mistake: the reader of input sorts first).
    void change(Instant from, Zone zone);

    const Zone& zone_at(Instant at) const;
    WallTime wall_time(Instant at) const;
    /// The moments at which the client's clock showed `wall`: in the zone that held then. repeated
    /// also where travel west brought the same wall time back, skipped also where travel east
    /// jumped over it.
    WallResolution resolve(WallTime wall) const;
    /// The stretch round `at` over which the client's clock keeps one offset.
    Interval constant_offset_round(Instant at) const;
    CivilDate date_at(Instant at) const;

    /// The days that cover [from, to), whole (the first and last may reach past it). Empty for an
    /// empty interval.
    std::vector<CivilDay> days(Interval window) const;
    CivilDay day_of(CivilDate date) const;

    /// The part of `day` from the moment its clock first shows `begin` after midnight or later, to
    /// the moment it first shows `end` or later; 24 h is the day's own end. So windows that share
    /// an edge share no second and leave none out, whatever the clock does: a skipped hour is
    /// empty, a repeated one lasts two hours.
    Interval clock_window(const CivilDay& day, std::chrono::seconds begin,
                          std::chrono::seconds end) const;

    /// Zones in use at some time within the window, in order of first use.
    std::vector<Zone> zones_in(Interval window) const;
    /// Dates within the window on which the zone changed: days of travel.
    std::vector<CivilDate> travel_days(Interval window) const;

    /// How what this clock shows is written. It goes along with the clock, for words are made
    /// wherever a date or a time of day is read off it.
    WayOfWriting writing() const { return writing_; }
    void write(WayOfWriting way) { writing_ = way; }

  private:
    struct Since {
        Instant from;
        Zone zone;
    };
    std::vector<Since> changes_;  // ascending; the first holds since the beginning of time
    WayOfWriting writing_;

    Instant first_showing(WallTime wall) const;
};

/// The client's clock, for reading it off moment after moment: looks the offset up once per
/// stretch.
class WallClock {
  public:
    explicit WallClock(const ZoneHistory& zones) : zones_(zones) {}

    std::chrono::seconds offset_at(Instant at) {
        if (!stretch_.contains(at)) {
            stretch_ = zones_.constant_offset_round(at);
            offset_ = zones_.zone_at(at).offset_at(at);
        }
        return offset_;
    }
    WallTime at(Instant moment) {
        return WallTime{(moment + offset_at(moment)).time_since_epoch()};
    }

  private:
    const ZoneHistory& zones_;
    Interval stretch_{};
    std::chrono::seconds offset_{0};
};

}  // namespace tracewright
