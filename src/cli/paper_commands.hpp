#pragma once

#include "cli/client_of_change.hpp"

#include <optional>
#include <string>

namespace tracewright {

struct PaperOptions {
    std::string out;              ///< folder for print and page; empty: only told
    std::string numbers_because;  ///< handout: why numbers are shown in spite of the eating screen
    std::optional<std::int64_t> about;  ///< letter: an escalation by its number
    std::string before;                 ///< letter: what is proposed
    std::string words;                  ///< letter: the proposed change's own
};

/// The client's own page.
Exit handout_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams);
/// The coach's page for the talk.
Exit talk_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams);
/// The letter to the prescriber.
Exit letter_of(const WhoseChange& whose, const PaperOptions& options, const Streams& streams);

}  // namespace tracewright
