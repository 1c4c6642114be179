#include "cli/command_line.hpp"

namespace tracewright {

namespace {

CLI::App* add_sheet(CommandLine& line, const char* name, const char* what) {
    CLI::App* command = line.app.add_subcommand(name, what);
    command->fallthrough();
    add_intake_options(*command, line.files);
    add_trace_options(*command, line.files);
    command->add_option("--diary", line.diaries, "Diary files")->allow_extra_args(false);
    command->add_option("--facts", line.facts,
                        "What is known of the client: a file of JSON (with --practice its own)");
    command->add_flag("--json", line.json,
                      "One versioned JSON object on standard output and nothing else");
    command->add_option("--out", line.sheet_options.out,
                        "The folder to write it to, for print (PDF) and as a page (HTML)");
    return command;
}

void add_first_day(CLI::App& command, SheetOptions& options) {
    command.get_option("FILE")->required(false);
    command.add_option("--starts", options.starts,
                       "First day of the wear (else a line to write it on)");
}

}  // namespace

void describe_sheet_commands(CommandLine& line) {
    SheetOptions& options = line.sheet_options;
    line.start_page =
        add_sheet(line, "start-page", "The client's page for the first day of a wear");
    add_first_day(*line.start_page, options);
    line.start_page->add_option("--site", options.site, "Where the sensor sits, in words");
    line.start_page->add_option("--days", options.days, "Planned days of the wear");
    line.diary_sheet =
        add_sheet(line, "diary-sheet", "A fortnight's days on paper, to be typed in later");
    add_first_day(*line.diary_sheet, options);
    line.explain =
        add_sheet(line, "explain", "Pages that explain with the client's own trace, where it can");
    line.explain->get_option("FILE")->required(false);
    line.explain->add_option("--page", options.page, "Which page (see --list), or all");
    line.explain->add_flag("--list", options.list,
                           "The pages there are, and how each chooses what it shows");
}

}  // namespace tracewright
