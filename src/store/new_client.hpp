#pragma once

#include "coaching/client_facts.hpp"
#include "store/practice_store.hpp"

#include <span>
#include <string>

namespace tracewright {

/// c1, c2, ...: the first that is free.
std::string free_handle(std::span<const ClientLine> clients);

/// Who is under 18 by the year of birth whatever the birthday: not taken on (safety rule 11). Who
/// only may be is asked about later.
bool surely_under_18(const ClientFacts& facts, Instant at);

}  // namespace tracewright
