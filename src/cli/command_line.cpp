#include "cli/command_line.hpp"

namespace tracewright {

CommandLine::CommandLine()
    : app("Reads glucose sensor traces and diaries and says what can be trusted, where lows are, "
          "where "
          "glucose sits, how it varies and when in the day it leaves the goal, each number with "
          "its "
          "interval. It supports coaching; it is not a medical device or medical advice.",
          "tracewright") {
    app.require_subcommand(0, 1);
    app.add_flag("--version", version,
                 "Versions of the program, the zone data and the JSON documents");
    app.add_option("--describe", describe,
                   "Print the man page (man) or the shell completion (bash)")
        ->check(CLI::IsMember({"man", "bash"}))
        ->group("");  // for the build, not for people

    look = app.add_subcommand("look",
                              "What is in the files: the guesses, sample rows, every row's fate; "
                              "stores nothing");
    add_intake_options(*look, files);
    look->add_flag("--json", json, "One versioned JSON object on standard output and nothing else");

    measures = app.add_subcommand("measures", "The measures of each file with their intervals");
    add_intake_options(*measures, files);
    add_trace_options(*measures, files);
    auto* as_json = measures->add_flag(
        "--json", json, "One versioned JSON object on standard output and nothing else");
    measures->add_flag("--csv", csv, "One row for each file and measure")->excludes(as_json);
    measures->add_flag("--no-intervals", no_intervals, "Leave the intervals out");
    measures
        ->add_option("--jobs", measures_options.jobs,
                     "How many files to read at once (else as many as "
                     "the machine has cores)")
        ->check(CLI::Range(1, 256));

    review = app.add_subcommand("review",
                                "A first review of one client from sensor files and diary: HTML, "
                                "PDF and JSON");
    review->fallthrough();
    add_intake_options(*review, files);
    add_trace_options(*review, files);
    review->add_option("--diary", diaries, "Diary files")->allow_extra_args(false);
    review
        ->add_option("--goals", files.goals,
                     "The goals: adults, older (older or high-risk), pregnancy")
        ->check(CLI::IsMember({"adults", "older", "pregnancy"}))
        ->capture_default_str();
    review->add_option("--out", out, "The folder to write to")->capture_default_str();
    describe_question_commands(*this);
    describe_change_commands(*this);
    describe_paper_commands(*this);
    describe_sheet_commands(*this);
    describe_practice_commands(*this);
}

}  // namespace tracewright
