#pragma once

#include "cli/streams.hpp"
#include "coaching/client_facts.hpp"
#include "time/instant.hpp"

namespace tracewright {

/// Where something of a client is stored: that consent was withdrawn or has ended. Says nothing
/// where it holds.
void say_consent_over(const ClientFacts& facts, Instant now, const Streams& streams);

}  // namespace tracewright
