#include "cli/command.hpp"

#include "cli/ask_command.hpp"
#include "cli/command_line.hpp"
#include "cli/json_text.hpp"
#include "cli/look_command.hpp"
#include "cli/meals_command.hpp"
#include "cli/review_command.hpp"
#include "render/ask_json.hpp"
#include "render/before_after_json.hpp"
#include "render/caseload_json.hpp"
#include "render/labs_json.hpp"
#include "render/paper_json.hpp"
#include "render/sensor_json.hpp"
#include "store/practice_schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <exception>
#include <functional>
#include <new>
#include <optional>
#include <ostream>

namespace tracewright {

namespace {

void print_version(std::ostream& out) {
    out << fmt::format(
        "tracewright {}\nzone data {}\nJSON look {}, measures {}, review {}, ask {}, meals "
        "{}, foods {}, trial {}, before-after {}, labs {}, sensor {}, caseload {}, paper {}, "
        "sheets {}\npractice tables "
        "{}\n",
        TRACEWRIGHT_VERSION, zone_data_version(), look_json_version, measures_json_version,
        review_json_version, ask_json_version, meals_json_version, foods_json_version,
        trial_json_version, before_after_json_version, labs_json_version, sensor_json_version,
        caseload_json_version, paper_json_version, sheets_json_version, practice_schema_version());
}

// --as-of may stand before the command or behind it.
void share_the_clock(CommandLine& line) {
    if (line.files.as_of.empty()) {
        line.files.as_of = line.practice.as_of;
    } else if (line.practice.as_of.empty()) {
        line.practice.as_of = line.files.as_of;
    }
}

// Nothing if none of the commands on a practice was given.
std::optional<Exit> dispatch_practice(CommandLine& line, const Streams& streams) {
    const PracticeVerbs& verbs = line.verbs;
    const PracticeOptions& at = line.practice;
    const PracticeWords& words = line.words;
    using Run = std::function<Exit()>;
    const std::pair<CLI::App*, Run> commands[] = {
        {verbs.init, [&] { return init_practice(at, words, streams); }},
        {verbs.client_add, [&] { return add_client(at, words, line.files, streams); }},
        {verbs.client_list, [&] { return list_clients(at, words, streams); }},
        {verbs.client_show, [&] { return show_client(at, words, streams); }},
        {verbs.client_change, [&] { return change_client(at, words, streams); }},
        {verbs.client_erase, [&] { return erase_client(at, words, streams); }},
        {verbs.client_export, [&] { return export_client(at, words, streams); }},
        {verbs.coach_add, [&] { return add_coach(at, words, streams); }},
        {verbs.coach_list, [&] { return list_coaches(at, streams); }},
        {verbs.coach_change, [&] { return change_coach(at, words, streams); }},
        {verbs.coach_passphrase, [&] { return set_coach_passphrase(at, words, streams); }},
        {verbs.keys_passphrase, [&] { return change_passphrase(at, words, streams); }},
        {verbs.keys_recovery, [&] { return change_recovery_key(at, streams); }},
        {verbs.serve, [&] { return serve(at, line.serve_words, streams); }},
        {verbs.bring_in, [&] { return bring_in_files(at, words, line.files, streams); }},
        {verbs.undo, [&] { return undo_import(at, words, streams); }},
        {verbs.jot, [&] { return jot(at, words, streams); }},
        {verbs.usual, [&] { return usual_foods(at, words, streams); }},
        {verbs.wear, [&] { return wear_of(at, line.wear_options, streams); }},
        {verbs.share, [&] { return share_of(at, line.share_options, streams); }},
        {verbs.note, [&] { return note(at, words, streams); }},
        {verbs.promise, [&] { return promise(at, words, streams); }},
        {verbs.acknowledge, [&] { return acknowledge(at, words, streams); }},
        {verbs.backup, [&] { return back_up(at, words, streams); }},
        {verbs.restore, [&] { return restore(at, words, streams); }},
        {verbs.caseload, [&] { return show_caseload(at, words, streams); }},
        {verbs.remind, [&] { return remind(at, line.remind_options, streams); }},
        {verbs.writing, [&] { return writing(at, line.writing_options, streams); }},
        {verbs.check, [&] { return check_practice(at, streams); }},
    };
    for (const auto& [command, run] : commands) {
        if (command->parsed()) {
            return run();
        }
    }
    return std::nullopt;
}

// Nothing if none of the commands on a change, or on papers, was given.
std::optional<Exit> dispatch_change(const CommandLine& line, const Streams& streams) {
    const WhoseChange whose{line.files, line.diaries, line.facts, line.practice, line.json};
    if (line.plan->parsed()) {
        return plan_change(whose, line.plan_options, streams);
    }
    if (line.trial->parsed()) {
        return trial(whose, line.trial_options, streams);
    }
    if (line.before_after->parsed()) {
        return before_after_of(whose, line.before_after_options, streams);
    }
    if (line.labs->parsed()) {
        return labs(whose, line.labs_options, streams);
    }
    if (line.story->parsed()) {
        return story(whose, line.story_options, streams);
    }
    if (line.sensor->parsed()) {
        return sensor(whose, streams);
    }
    if (line.handout->parsed()) {
        return handout_of(whose, line.paper_options, streams);
    }
    if (line.talk->parsed()) {
        return talk_of(whose, line.paper_options, streams);
    }
    if (line.letter->parsed()) {
        return letter_of(whose, line.paper_options, streams);
    }
    if (line.start_page->parsed()) {
        return start_page_of(whose, line.sheet_options, streams);
    }
    if (line.diary_sheet->parsed()) {
        return diary_sheet_of(whose, line.sheet_options, streams);
    }
    if (line.explain->parsed()) {
        return explain_of(whose, line.sheet_options, streams);
    }
    return std::nullopt;
}

Exit dispatch(CommandLine& line, const Streams& streams) {
    if (line.version) {
        print_version(streams.out);
        return Exit::done;
    }
    if (!line.describe.empty()) {
        streams.out << (line.describe == "man" ? man_page(line.app) : bash_completion(line.app));
        return Exit::done;
    }
    if (line.look->parsed()) {
        return look(line.files, line.json, streams);
    }
    if (line.measures->parsed()) {
        line.measures_options.form = line.json  ? MeasuresForm::json
                                     : line.csv ? MeasuresForm::csv
                                                : MeasuresForm::table;
        line.measures_options.intervals = !line.no_intervals;
        return measures(line.files, line.measures_options, streams);
    }
    if (line.review->parsed()) {
        if (!line.practice.practice.empty()) {
            share_the_clock(line);
            return review_client(line.practice, line.files, line.out, streams);
        }
        return review(line.files, line.diaries, line.out, streams);
    }
    share_the_clock(line);
    if (line.ask->parsed()) {
        line.ask_options.json = line.json;
        if (!line.practice.practice.empty() && !line.ask_options.list) {
            return ask_client(line.practice, line.files, line.ask_options, streams);
        }
        return ask(line.files, line.diaries, line.ask_options, streams);
    }
    if (line.meals->parsed()) {
        if (!line.practice.practice.empty()) {
            return meals_client(line.practice, line.files, line.json, streams);
        }
        return meals(line.files, line.diaries, line.json, streams);
    }
    if (line.foods->parsed()) {
        line.foods_options.json = line.json;
        if (!line.foods_options.client.empty()) {
            return foods_client(line.practice, line.foods_options, streams);
        }
        return foods(line.foods_options, streams);
    }
    if (const auto done = dispatch_change(line, streams)) {
        return *done;
    }
    if (const auto done = dispatch_practice(line, streams)) {
        return *done;
    }
    streams.err << line.app.help();
    return Exit::wrong_usage;
}

// What was told but did not arrive (a full disk, a pipe that closed) was not done.
Exit with_all_written(Exit exit, const Streams& streams) {
    streams.out.flush();
    if (streams.out) {
        return exit;
    }
    streams.err << "tracewright: found no way to write all of the output, expected room for it\n";
    return exit == Exit::done ? Exit::bad_input : exit;
}

}  // namespace

Exit run_command(const std::vector<std::string>& args, const Streams& streams) {
    CommandLine line;
    try {
        // The library takes the words last first.
        line.app.parse(std::vector<std::string>(args.rbegin(), args.rend()));
    } catch (const CLI::ParseError& error) {
        const bool asked_for_help = error.get_exit_code() == 0;
        line.app.exit(error, asked_for_help ? streams.out : streams.err, streams.err);
        return asked_for_help ? Exit::done : Exit::wrong_usage;
    }
    try {
        return with_all_written(dispatch(line, streams), streams);
    } catch (const std::bad_alloc&) {
        streams.err << "tracewright: found too little memory for this, expected more\n";
    } catch (const std::exception&) {
        // Without its words: they may hold what is a client's.
        streams.err << "tracewright: found a fault of the program here; it did no more\n";
    }
    return Exit::bad_input;
}

}  // namespace tracewright
