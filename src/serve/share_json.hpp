#pragma once

#include "coaching/client_facts.hpp"
#include "render/review_json.hpp"
#include "store/practice_records.hpp"

#include <span>

namespace tracewright {

/// "hours in range", ... in their order.
Json json_of(const SharedKinds& kinds);

/// Every share of a client with its state at `now` and its looks, by the client's clock; whether
/// the client's consent holds, and what the eating screen closes in all of them.
Json json_of_shares(std::span<const ShareRecord> shares, const ClientFacts& facts, Instant now);

/// "open", "ended" or "revoked", as of `now`.
const char* state_of(const Share& share, Instant now);

}  // namespace tracewright
