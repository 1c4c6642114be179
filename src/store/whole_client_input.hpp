#pragma once

#include "coaching/client_facts.hpp"
#include "findings/review_input.hpp"
#include "store/practice_store.hpp"

namespace tracewright {

/// All that is kept of a client's readings and diary, by the client's clock and unit, for what
/// looks over all wears: questions, the plan, what was tried. What was taken when a wear began
/// stands in the diary as an entry of it, so that a change between wears is seen. No wear: `wears`
/// is empty. The caller sets window, `as_of` and seed.
Stored<ReviewInput> whole_client_input(PracticeStore& store, std::int64_t client,
                                       const ClientFacts& facts);

}  // namespace tracewright
