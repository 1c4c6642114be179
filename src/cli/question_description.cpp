#include "cli/command_line.hpp"

namespace tracewright {

namespace {

void describe_ask(CommandLine& line) {
    line.ask =
        line.app.add_subcommand("ask", "What an outcome goes with, and when these data can't tell");
    line.ask->fallthrough();
    add_intake_options(*line.ask, line.files);
    add_trace_options(*line.ask, line.files);
    line.ask->get_option("FILE")->required(false);
    line.ask->add_option("--diary", line.diaries, "Diary files")->allow_extra_args(false);
    AskOptions& options = line.ask_options;
    line.ask->add_option("--about", options.about, "The outcome (see --list)");
    line.ask
        ->add_option("--because", options.because,
                     "The causes, separated by commas; asked together")
        ->allow_extra_args(false);
    line.ask->add_flag("--scan", options.scan,
                       "Look at every cause on its own: what may be worth a trial");
    line.ask->add_flag("--list", options.list, "The outcomes and causes that can be asked");
    line.ask->add_option("--worth", options.worth,
                         "The smallest difference worth acting on, in the unit shown or hours");
    line.ask->add_flag("--json", line.json,
                       "One versioned JSON object on standard output and nothing else");
}

}  // namespace

void describe_question_commands(CommandLine& line) {
    describe_ask(line);
}

}  // namespace tracewright
