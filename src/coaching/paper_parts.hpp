#pragma once

#include "coaching/care_input.hpp"
#include "coaching/paper.hpp"

#include <optional>
#include <string>

namespace tracewright {

// What the client's sheets and pages have in common, in the client's words.

/// First aid for a low, for whom medicines can cause lows or may (safety rules 1 and 15); empty
/// for the others.
std::optional<PaperBox> first_aid(const CareInput& care);

/// Whom to ring: the clinic or prescriber, the local emergency number (an emergency contact without
/// a name, of digits alone: never limited by hours), and by name who is to be told in an emergency;
/// blank lines where no number is known.
void add_contacts(Paper& paper, const ClientFacts& facts);

/// "Last sensor reading: Mon 16 March 23:55, 2 days ago. This page knows nothing after it."
std::string last_reading_for_client(const CareInput& care);

/// Closes a client's page: how old the record is, and each caution once (safety rule 6).
void end_client_page(Paper& paper, const CareInput& care);

/// The moment a paper was made as ISO 8601 (UTC), so that one input gives the same bytes.
std::string made_at(Instant as_of);

}  // namespace tracewright
