#pragma once

#include "coaching/client_facts.hpp"
#include "intake/bring_in.hpp"
#include "serve/reply.hpp"
#include "serve/request.hpp"
#include "store/import_plan.hpp"

#include <tl/expected.hpp>

namespace tracewright {

/// A file that was sent to be looked at or kept, and what the coach answered about it.
struct AskedIntake {
    Intake intake;
    WhoseFile whose = WhoseFile::not_asked;
};

/// Reads the body as a file called ?name=, by the client's clock, with the answers in the query:
/// unit, date_order (day, month, year), decimal (point, comma), person, time_column,
/// glucose_column, header_line, sheet, encoding, whose (this_client). An intake with an open
/// question is no error. Error: 415 for another type of body than octets, 422 for a query that is
/// none of these or holds what it can't, or for a file that gives nothing.
tl::expected<AskedIntake, Reply> asked_intake(const Request& request, const RequestTarget& target,
                                              const ClientFacts& facts, Instant now);

}  // namespace tracewright
