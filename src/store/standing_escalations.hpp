#pragma once

#include "coaching/client_review.hpp"
#include "store/practice_store.hpp"

#include <optional>
#include <vector>

namespace tracewright {

/// Looks for what the ladder names in all that is kept of a client, and keeps each event with when
/// it was first seen. What was answered stays answered; what was not, and arises no more, is
/// withdrawn.
Stored<void> record_escalations(PracticeStore& store, std::int64_t client, const ClientFacts& facts,
                                const Acting& acting);

/// The client's escalations as they stand, of one window or of all time: those in the data now, and
/// those that were answered, whatever became of their data.
Stored<std::vector<StandingEscalation>> standing_escalations(
    PracticeStore& store, std::int64_t client, const ClientFacts& facts,
    std::optional<Interval> window = std::nullopt);

}  // namespace tracewright
