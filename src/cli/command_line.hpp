#pragma once

#include "cli/ask_command.hpp"
#include "cli/change_commands.hpp"
#include "cli/file_options.hpp"
#include "cli/foods_command.hpp"
#include "cli/measures_command.hpp"
#include "cli/paper_commands.hpp"
#include "cli/plan_command.hpp"
#include "cli/practice_commands.hpp"
#include "cli/remind_command.hpp"
#include "cli/serve_command.hpp"
#include "cli/share_command.hpp"
#include "cli/sheet_commands.hpp"
#include "cli/story_command.hpp"
#include "cli/wear_command.hpp"
#include "cli/writing_command.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>
#include <vector>

namespace tracewright {

/// The commands on a practice.
struct PracticeVerbs {
    CLI::App* init = nullptr;
    CLI::App* client_add = nullptr;
    CLI::App* client_list = nullptr;
    CLI::App* client_show = nullptr;
    CLI::App* client_change = nullptr;
    CLI::App* client_erase = nullptr;
    CLI::App* client_export = nullptr;
    CLI::App* coach_add = nullptr;
    CLI::App* coach_list = nullptr;
    CLI::App* coach_change = nullptr;
    CLI::App* coach_passphrase = nullptr;
    CLI::App* keys_passphrase = nullptr;
    CLI::App* keys_recovery = nullptr;
    CLI::App* bring_in = nullptr;
    CLI::App* undo = nullptr;
    CLI::App* jot = nullptr;
    CLI::App* usual = nullptr;
    CLI::App* wear = nullptr;
    CLI::App* share = nullptr;
    CLI::App* note = nullptr;
    CLI::App* promise = nullptr;
    CLI::App* acknowledge = nullptr;
    CLI::App* backup = nullptr;
    CLI::App* restore = nullptr;
    CLI::App* check = nullptr;
    CLI::App* caseload = nullptr;
    CLI::App* remind = nullptr;
    CLI::App* writing = nullptr;
    CLI::App* serve = nullptr;
};

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
    CLI::App* ask = nullptr;
    CLI::App* meals = nullptr;
    CLI::App* foods = nullptr;
    CLI::App* plan = nullptr;
    CLI::App* trial = nullptr;
    CLI::App* before_after = nullptr;
    CLI::App* labs = nullptr;
    CLI::App* story = nullptr;
    CLI::App* sensor = nullptr;
    CLI::App* start_page = nullptr;
    CLI::App* diary_sheet = nullptr;
    CLI::App* explain = nullptr;
    CLI::App* handout = nullptr;
    CLI::App* talk = nullptr;
    CLI::App* letter = nullptr;
    PracticeVerbs verbs;

    FileOptions files;
    PracticeOptions practice;
    PracticeWords words;
    ServeWords serve_words;
    MeasuresOptions measures_options;
    AskOptions ask_options;
    FoodsOptions foods_options;
    PlanOptions plan_options;
    RemindOptions remind_options;
    WritingOptions writing_options;
    WearOptions wear_options;
    ShareOptions share_options;
    TrialOptions trial_options;
    BeforeAfterOptions before_after_options;
    LabsOptions labs_options;
    PaperOptions paper_options;
    SheetOptions sheet_options;
    StoryOptions story_options;
    std::string facts;  ///< of a command on a change
    bool json = false;
    bool csv = false;
    bool no_intervals = false;
    std::vector<std::string> diaries;
    std::string out = "review";
    bool version = false;
    std::string describe;  ///< "man" or "bash": print the man page or the completion
};

/// Adds the commands that ask what glucose goes with.
void describe_question_commands(CommandLine& line);

/// Adds the commands on a change: trial, before and after, labs.
void describe_change_commands(CommandLine& line);

/// Adds the commands on papers: handout, talk sheet, letter.
void describe_paper_commands(CommandLine& line);
/// Adds the commands on sheets and explaining pages.
void describe_sheet_commands(CommandLine& line);

/// Adds the commands on a practice to the description.
void describe_practice_commands(CommandLine& line);

std::string man_page(const CLI::App& app);
std::string bash_completion(const CLI::App& app);

}  // namespace tracewright
