#include "cli/command_line.hpp"

namespace tracewright {

namespace {

void add_whose(CLI::App& command, CommandLine& line) {
    command.fallthrough();
    add_intake_options(command, line.files);
    add_trace_options(command, line.files);
    command.add_option("--diary", line.diaries, "Diary files")->allow_extra_args(false);
    command.add_option("--facts", line.facts,
                       "What is known of the client: a file of JSON (with --practice its own)");
    command.add_flag("--json", line.json,
                     "One versioned JSON object on standard output and nothing else");
}

void describe_plan(CommandLine& line) {
    line.plan = line.app.add_subcommand(
        "plan", "Changes worth a talk, ranked; agree on one, or say how it ended");
    add_whose(*line.plan, line);
    PlanOptions& options = line.plan_options;
    line.plan->add_option("--worth", options.worth,
                          "Hours in range a day that are worth a change (else 0.5)");
    line.plan->add_option("--agree", options.agree, "What the client will do, in their words");
    line.plan->add_option("--candidate", options.candidate, "The candidate it comes from");
    line.plan->add_option("--kind", options.kind,
                          "Else what it is: walking, food-change, other, ... (asks its gates)");
    line.plan->add_option(
        "--eating", options.eating,
        "Of other or food-change, what it does to eating: nothing, as-much "
        "(other food or order) or less (less, later, a meal out, longer without)");
    line.plan->add_option("--moves", options.moves, "Whether it moves the body: yes or no");
    line.plan->add_option("--medicine", options.medicine,
                          "Whether it touches a medicine, its dose or its time: yes or no");
    line.plan->add_flag("--with-prescriber", options.with_prescriber,
                        "It was made with the prescriber, whose answer is on record");
    line.plan->add_option("--when", options.when, "When the client does it");
    line.plan->add_option("--where", options.where, "Where");
    line.plan->add_option("--how-often", options.how_often, "How often");
    line.plan->add_option("--if-not", options.if_not, "What then, on a day it can't be done");
    line.plan->add_option("--how-checked", options.how_checked,
                          "By what it is checked (else, of a candidate, as the plan says)");
    line.plan->add_option("--check-on", options.check_on, "The day of the check");
    line.plan->add_option("--stop-when", options.stop_when, "When the client stops");
    line.plan->add_option("--ended", options.ended, "The agreed one was kept, dropped or changed");
    line.plan->add_option("--on", options.on, "The day of agreeing or ending (else today)");
}

void describe_trial(CommandLine& line) {
    line.trial = line.app.add_subcommand(
        "trial", "Plan a randomised trial within one client, or read one that has ended");
    add_whose(*line.trial, line);
    line.trial->get_option("FILE")->required(false);
    TrialOptions& options = line.trial_options;
    line.trial->add_flag("--list", options.list, "The questions that are ready");
    line.trial->add_option("--question", options.question, "Plan this one (see --list)");
    line.trial->add_option("--pairs", options.pairs,
                           "How many pairs of days (else as many as the client's noise asks for)");
    line.trial->add_option("--worth", options.worth,
                           "The difference to be seen, in the unit shown or hours");
    line.trial->add_flag("--balanced", options.balanced,
                         "As many pairs either way (even, from 8 on; else a coin for each)");
    line.trial->add_option("--starts", options.starts, "First day (else tomorrow)");
    line.trial->add_option("--write", options.write, "Write the trial down in this file");
    line.trial->add_option("--calendar", options.calendar, "Write its days as an iCalendar file");
    line.trial->add_option("--read", options.read, "Read a trial that was written down");
    line.trial
        ->add_option("--done", options.done,
                     "DATE=a, b or neither: what was done, where the diary doesn't tell")
        ->allow_extra_args(false);
    line.trial->add_flag("--keep", options.keep,
                         "With a practice: keep the trial; it stays as drawn");
    line.trial->add_flag("--kept", options.kept, "With a practice: list the trials kept");
    line.trial->add_option("--number", options.number,
                           "With a practice: read this one, or with --done tell its days");
    line.trial->add_option("--stop", options.stop, "Why the trial --number is stopped");
    line.trial->add_flag("--report", options.report, "The items of a report on one person's trial");
    line.trial->add_option("--page", options.page,
                           "Write its paper in this file (.pdf or .html): the client's calendar, "
                           "after its end the coach's report");
}

void describe_before_after(CommandLine& line) {
    line.before_after = line.app.add_subcommand(
        "before-after", "Hours in range of later wears against earlier ones");
    add_whose(*line.before_after, line);
    BeforeAfterOptions& options = line.before_after_options;
    line.before_after
        ->add_option("--before", options.before,
                     "Wears before, by number, separated by commas (else the last but one)")
        ->delimiter(',');
    line.before_after
        ->add_option("--after", options.after, "Wears after, by number (else the last)")
        ->delimiter(',');
    line.before_after->add_flag("--other-kind", options.other_kind,
                                "The sensors were of different kinds");
    line.before_after->add_option(
        "--worth", options.worth,
        "The smallest difference worth acting on, hours a day (else 1.2)");
    line.before_after->add_option("--sensor-error", options.sensor_error,
                                  "One sensor's own error, percent (else 5, of another kind 6)");
}

void describe_labs(CommandLine& line) {
    line.labs = line.app.add_subcommand(
        "labs", "Laboratory results beside the sensor, the next A1c, remission");
    add_whose(*line.labs, line);
    line.labs->add_option("--diet-started", line.labs_options.diet_started,
                          "First day of a diet programme");
    line.labs->add_option("--surgery-on", line.labs_options.surgery_on, "Day of surgery");
}

void describe_story(CommandLine& line) {
    line.story = line.app.add_subcommand(
        "story", "Labs, wears, medicines, changes and trials on one line; what is still unknown");
    add_whose(*line.story, line);
    line.story->add_option("--html", line.story_options.html, "Write it as a page into this file");
}

void describe_sensor(CommandLine& line) {
    line.sensor = line.app.add_subcommand(
        "sensor", "How long sensors lasted, how far they read from finger-pricks");
    add_whose(*line.sensor, line);
}

}  // namespace

void describe_change_commands(CommandLine& line) {
    describe_plan(line);
    describe_trial(line);
    describe_before_after(line);
    describe_labs(line);
    describe_story(line);
    describe_sensor(line);
}

}  // namespace tracewright
