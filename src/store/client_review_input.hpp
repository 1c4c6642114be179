#pragma once

#include "coaching/client_facts.hpp"
#include "findings/review_input.hpp"
#include "store/practice_store.hpp"

#include <optional>

namespace tracewright {

/// Leaves the wear whose readings go furthest and what was worn beside it: what a review without a
/// window shows.
void keep_last_wear(std::vector<StoredWear>& wears);
/// The days of the diary that belong to wears, of which there is one: with the night before.
Interval with_the_night_before(const std::vector<StoredWear>& wears);

/// What a review of a client reads, by the client's clock, unit and goals: the window's wears and
/// diary; without a window the last wear, what was worn beside it, and the diary from the night
/// before. No wear with a reading there: `wears` is empty. The caller sets `as_of` and the seed.
Stored<ReviewInput> client_review_input(PracticeStore& store, std::int64_t client,
                                        const ClientFacts& facts, std::optional<Interval> window);

}  // namespace tracewright
