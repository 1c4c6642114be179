#include "cli/ask_command.hpp"
#include "cli/client_of_practice.hpp"
#include "cli/meals_command.hpp"
#include "cli/practice_commands.hpp"

namespace tracewright {

Exit ask_client(const PracticeOptions& options, const FileOptions& files, const AskOptions& asked,
                const Streams& streams) {
    const auto input = client_of_practice(options, files, "question_asked", !asked.json, streams);
    return input ? ask_of(input->input, asked, streams) : input.error();
}

Exit meals_client(const PracticeOptions& options, const FileOptions& files, bool json,
                  const Streams& streams) {
    const auto input = client_of_practice(options, files, "meals_looked_at", !json, streams);
    return input ? meals_of(input->input, json, streams) : input.error();
}

}  // namespace tracewright
