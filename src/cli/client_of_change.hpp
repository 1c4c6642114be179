#pragma once

#include "cli/file_options.hpp"
#include "cli/practice_options.hpp"
#include "cli/streams.hpp"
#include "coaching/client_facts.hpp"
#include "coaching/licence.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// Whose readings a command on a change reads: files with --facts, or a client with --practice.
struct WhoseChange {
    FileOptions files;
    std::vector<std::string> diaries;
    std::string facts;  ///< a file of JSON (docs/formats/client-facts.schema.json)
    PracticeOptions practice;
    bool json = false;
};

/// What the commands on a change read of one client.
struct ClientOfChange {
    ReviewInput input;
    ClientFacts facts;
    Exit exit = Exit::done;
    std::optional<OpenClient> open = {};  ///< of a practice: for what is kept afterwards
    Licence licence = Licence::none;      ///< of the coach who asks
};
/// Error: the exit code, its sentence said.
tl::expected<ClientOfChange, Exit> client_of_change(const WhoseChange& whose, const char* looked,
                                                    const Streams& streams);

/// The facts in a file of JSON; without a path those of nobody. Error: a sentence.
tl::expected<ClientFacts, std::string> facts_in_file(const std::string& path);

/// "2026-03-02" on the command line. Error: a sentence.
tl::expected<CivilDate, std::string> date_on_command_line(const std::string& text);
std::string iso_date(CivilDate date);

/// A finding with its next step and caveats, as text.
void print_finding(const Finding& finding, std::ostream& out);

}  // namespace tracewright
