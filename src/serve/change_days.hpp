#pragma once

#include "coaching/client_facts.hpp"
#include "serve/reply.hpp"

namespace tracewright {

/// The days of the changes agreed with a client in words ("Fri 16 January 2026"), each under the
/// day as replies have it ("2026-01-16"), for those who turn no day into words.
Json days_of_changes_in_words(const ClientFacts& facts);

}  // namespace tracewright
