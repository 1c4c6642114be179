#pragma once

#include "coaching/client_facts.hpp"
#include "findings/review_input.hpp"
#include "store/practice_store.hpp"

#include <optional>

namespace tracewright {

/// What a review of a client reads, by the client's clock, unit and goals: the window's wears and
/// diary; without a window the last wear, what was worn beside it, and the diary from the night
/// before. No wear with a reading there: `wears` is empty. The caller sets `as_of` and the seed.
Stored<ReviewInput> client_review_input(PracticeStore& store, std::int64_t client,
                                        const ClientFacts& facts, std::optional<Interval> window);

}  // namespace tracewright
