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

void describe_meals(CommandLine& line) {
    line.meals = line.app.add_subcommand(
        "meals", "What each meal did, meals compared, rises to ask about, finger-prick pairs");
    line.meals->fallthrough();
    add_intake_options(*line.meals, line.files);
    add_trace_options(*line.meals, line.files);
    line.meals->add_option("--diary", line.diaries, "Diary files")->allow_extra_args(false);
    line.meals->add_flag("--json", line.json,
                         "One versioned JSON object on standard output and nothing else");
}

void describe_foods(CommandLine& line) {
    line.foods = line.app.add_subcommand(
        "foods", "Look foods up: energy, carbohydrate and fibre of a portion");
    FoodsOptions& options = line.foods_options;
    line.foods->add_option("WORDS", options.words, "What the food is called");
    line.foods->fallthrough();
    line.foods->add_option("--client", options.client,
                           "On a practice: whose own foods are tried first");
    line.foods->add_option("--eaten", options.eaten,
                           "Work out a diary text instead: foods, portions, what is not sure");
    line.foods->add_option("--grams", options.grams, "The portion's weight (else a household one)");
    line.foods->add_option("--most", options.most, "How many foods to show at most")
        ->check(CLI::Range(1, 1000))
        ->capture_default_str();
    line.foods->add_option("--table", options.table,
                           "Another table, nutrients per 100 g: delimited text or a workbook");
    line.foods
        ->add_option("--column", options.columns,
                     "A column of --table, such as food=TITLE or carbohydrate=4 (may be repeated)")
        ->allow_extra_args(false);
    line.foods->add_option("--decimal", options.decimal, "Its decimal mark: point or comma")
        ->check(CLI::IsMember({"point", "comma"}));
    auto* without =
        line.foods->add_flag("--available", options.available, "Its carbohydrate is without fibre");
    line.foods->add_flag("--total", options.total, "Its carbohydrate is with fibre")
        ->excludes(without);
    line.foods->add_flag("--json", line.json,
                         "One versioned JSON object on standard output and nothing else");
}

}  // namespace

void describe_question_commands(CommandLine& line) {
    describe_ask(line);
    describe_meals(line);
    describe_foods(line);
}

}  // namespace tracewright
