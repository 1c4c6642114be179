#pragma once

#include "client_days.hpp"
#include "time/zone_history.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// The zones of a story as the rest of the programme knows them. std::runtime_error if this
/// machine's zone data lack one.
ZoneHistory zones_of(const ClientStory& story);

/// The plasma glucose that the meal model gives for a client's days, mg/dL for every minute of
/// `window` (whole minutes). The body starts a day earlier, at rest, so that the first minutes are
/// already a life. Early-morning rise: kp1 times 1 + 0.06 cos(2 pi (clock - 5 h) / 24 h).
std::vector<double> glucose_course(const ClientStory& story, std::span<const StoryDay> days,
                                   const ZoneHistory& zones, Interval window);

}  // namespace tracewright
