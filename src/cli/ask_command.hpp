#pragma once

#include "cli/file_options.hpp"
#include "cli/json_text.hpp"
#include "cli/streams.hpp"
#include "coaching/client_facts.hpp"
#include "coaching/licence.hpp"
#include "findings/question_findings.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

struct AskOptions {
    std::string about;                 ///< code of an outcome
    std::vector<std::string> because;  ///< codes of causes, commas within
    bool list = false;
    bool scan = false;
    std::optional<double> worth;  ///< in the unit shown, or hours
    bool json = false;
};

/// Asks what an outcome goes with, straight from files.
Exit ask(const FileOptions& files, const std::vector<std::string>& diaries,
         const AskOptions& options, const Streams& streams);

/// What a practice knows of the one who is asked about, and who asks.
struct KnownOfClient {
    const ClientFacts& facts;
    Licence licence;
};

/// The same of what is already gathered. A trial whose gate is closed for this client is not
/// offered (safety rules 7 to 12); without `known` all that is not known closes.
Exit ask_of(const ReviewInput& input, const AskOptions& options, const Streams& streams,
            const KnownOfClient* known = nullptr);

}  // namespace tracewright
