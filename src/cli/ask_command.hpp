#pragma once

#include "cli/file_options.hpp"
#include "cli/json_text.hpp"
#include "cli/streams.hpp"
#include "findings/question_findings.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

inline constexpr int ask_json_version = 1;

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

/// The same of what is already known of one client.
Exit ask_of(const ReviewInput& input, const AskOptions& options, const Streams& streams);

/// The document of docs/formats/ask.schema.json.
Json json_of_answers(const QuestionAnswers& answers, const ReviewInput& input);

}  // namespace tracewright
