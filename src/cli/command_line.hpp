#pragma once

#include "cli/file_options.hpp"
#include "cli/measures_command.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>
#include <vector>

namespace tracewright {

/// The command's own description, from which help, man page and completion are made, with what was
/// typed.
struct CommandLine {
    CommandLine();
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;

    CLI::App app;
    CLI::App* look = nullptr;
    CLI::App* measures = nullptr;
    CLI::App* review = nullptr;

    FileOptions files;
    MeasuresOptions measures_options;
    bool json = false;
    bool csv = false;
    bool no_intervals = false;
    std::vector<std::string> diaries;
    std::string out = "review";
    bool version = false;
    std::string describe;  ///< "man" or "bash": print the man page or the completion
};

std::string man_page(const CLI::App& app);
std::string bash_completion(const CLI::App& app);

}  // namespace tracewright
