#pragma once

#include "cli/client_of_change.hpp"
#include "store/client_for_papers.hpp"

#include <string>

namespace tracewright {

/// What the papers on a client read, and how the command ends so far.
struct ClientAskedForPapers : ClientForPapers {
    Exit exit = Exit::done;
};

/// `looked`: what the audit notes. `note`: kept among the client's notes; only a practice can keep
/// it. Error: the exit code, its sentence said.
tl::expected<ClientAskedForPapers, Exit> client_asked_for_papers(const WhoseChange& whose,
                                                                 const char* looked,
                                                                 const std::string& note,
                                                                 const Streams& streams);

}  // namespace tracewright
