#pragma once

#include "coaching/client_facts.hpp"
#include "coaching/licence.hpp"
#include "render/review_json.hpp"

namespace tracewright {

/// What is known of a client's care as the page shows it beside the facts: each medicine as it was
/// recognised, what has to be asked about them, and what is closed by an answer or by its lack:
/// each gate once, in the scope of the coach's licence, with what it closes. Gates that look at
/// readings or diary are left to the places that have them.
Json json_of_care(const ClientFacts& facts, Licence licence, Instant now);

}  // namespace tracewright
