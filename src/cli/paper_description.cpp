#include "cli/command_line.hpp"

namespace tracewright {

namespace {

CLI::App* add_paper(CommandLine& line, const char* name, const char* what) {
    CLI::App* command = line.app.add_subcommand(name, what);
    command->fallthrough();
    add_intake_options(*command, line.files);
    add_trace_options(*command, line.files);
    command->add_option("--diary", line.diaries, "Diary files")->allow_extra_args(false);
    command->add_option("--facts", line.facts,
                        "What is known of the client: a file of JSON (with --practice its own)");
    command->add_flag("--json", line.json,
                      "One versioned JSON object on standard output and nothing else");
    command->add_option("--out", line.paper_options.out,
                        "The folder to write it to, for print (PDF) and as a page (HTML)");
    return command;
}

}  // namespace

void describe_paper_commands(CommandLine& line) {
    PaperOptions& options = line.paper_options;
    line.handout = add_paper(line, "handout", "One page for the client, from the review");
    line.handout->add_option("--show-numbers-because", options.numbers_because,
                             "Show the numbers that an open or positive eating screen turns down: "
                             "the reason, which is kept among the notes");
    line.talk = add_paper(line, "talk", "The coach's page for a talk, from the review");
    line.letter = add_paper(line, "letter", "The letter to the prescriber, its reason first");
    line.letter->add_option("--about", options.about,
                            "The escalation with this number alone (see 'acknowledge')");
    line.letter
        ->add_option("--before", options.before,
                     "Ask the prescriber before this is offered: low-carbohydrate, fasting, "
                     "meal-skipping, weight-loss, food, walking, other")
        ->check(CLI::IsMember({"low-carbohydrate", "fasting", "meal-skipping", "weight-loss",
                               "food", "walking", "other"}));
    line.letter->add_option("--words", options.words, "The proposed change in words");
}

}  // namespace tracewright
