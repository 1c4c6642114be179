#pragma once

#include "coaching/client_facts.hpp"
#include "time/instant.hpp"
#include "time/way_of_writing.hpp"

#include <string>

namespace tracewright {

/// For the coach, wherever something of the client is made, stored or listed: that consent was
/// withdrawn or has ended, when, and what is to be done. Empty where it was not. Nothing is refused
/// for it: what safety needs may still have to be printed.
std::string consent_over_for_coach(const Consent& consent, CivilDate today, WayOfWriting way);

}  // namespace tracewright
