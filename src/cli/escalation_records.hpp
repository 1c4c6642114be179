#pragma once

#include "cli/streams.hpp"
#include "coaching/client_review.hpp"
#include "store/practice_store.hpp"

#include <vector>

namespace tracewright {

/// Looks for what the ladder names in all that is kept of a client, and keeps each event with when
/// it was first seen. What was answered stays answered.
Stored<void> record_escalations(PracticeStore& store, std::int64_t client, const ClientFacts& facts,
                                const Acting& acting);

/// The client's escalations as they stand, of one window or of all time: those in the data now, and
/// those whose data were undone since, until they are answered.
Stored<std::vector<StandingEscalation>> standing_escalations(
    PracticeStore& store, std::int64_t client, const ClientFacts& facts,
    std::optional<Interval> window = std::nullopt);

/// Records what is new and says what is not answered, at once when something was stored: not only
/// when somebody asks for a review.
Exit say_escalations(PracticeStore& store, std::int64_t client, const ClientFacts& facts,
                     const Acting& acting, const Streams& streams);

}  // namespace tracewright
