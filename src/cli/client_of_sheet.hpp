#pragma once

#include "cli/client_of_change.hpp"

#include <string>

namespace tracewright {

/// What a sheet that needs no readings reads of one client: the facts, and of what there is of
/// readings only when the last one was.
struct ClientOfSheet {
    ReviewInput input;
    ClientFacts facts;
    Exit exit = Exit::done;
};

/// As client_of_change, but files and readings may be missing. The name stands in
/// `input.of_whom` where a practice knows it. Error: the exit code, its sentence said.
tl::expected<ClientOfSheet, Exit> client_of_sheet(const WhoseChange& whose, const char* looked,
                                                  const Streams& streams);

}  // namespace tracewright
