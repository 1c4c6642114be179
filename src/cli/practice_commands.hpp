#pragma once

#include "cli/ask_command.hpp"
#include "cli/file_options.hpp"
#include "cli/foods_command.hpp"
#include "cli/practice_options.hpp"

#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// What was typed for the commands on a practice.
struct PracticeWords {
    std::string client;  ///< handle or whole name
    std::string name;
    std::string handle;
    std::string facts;  ///< a file of JSON
    std::string out;
    std::string text;
    std::string by;
    std::string done;
    std::string due;
    std::string role;
    std::string licence;
    std::string confirm;
    std::string wear_end;
    std::string word;  ///< what the client writes ...
    std::string is;    ///< ... and what it is
    std::string recipe;
    std::string of;
    std::string food;
    std::string portion;
    std::string from_file;
    std::string day;
    double portions = 1;
    std::optional<double> grams;
    std::optional<double> carbohydrate;
    std::optional<double> fibre;
    std::optional<double> energy;
    std::vector<std::string> medicines;
    std::vector<std::string> erased_lists;
    std::optional<std::int64_t> number;
    std::optional<std::int64_t> kept;
    std::optional<std::int64_t> forget;
    bool available = false;
    bool total = false;
    bool keep = false;
    bool json = false;
    bool this_client = false;
    bool preview = false;
    bool without_export = false;
    bool left = false;
};

/// Makes a practice, prints its recovery key once, tried before it is printed.
Exit init_practice(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams);

Exit add_client(const PracticeOptions& options, const PracticeWords& words,
                const FileOptions& files, const Streams& streams);
Exit list_clients(const PracticeOptions& options, const PracticeWords& words,
                  const Streams& streams);
Exit show_client(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams);
Exit change_client(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams);
Exit erase_client(const PracticeOptions& options, const PracticeWords& words,
                  const Streams& streams);
Exit export_client(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams);

Exit add_coach(const PracticeOptions& options, const PracticeWords& words, const Streams& streams);
Exit list_coaches(const PracticeOptions& options, const Streams& streams);
Exit change_coach(const PracticeOptions& options, const PracticeWords& words,
                  const Streams& streams);
/// An owner puts another passphrase in the place of the practice's, or a new recovery key, which is
/// printed once and was tried.
Exit change_passphrase(const PracticeOptions& options, const PracticeWords& words,
                       const Streams& streams);
Exit change_recovery_key(const PracticeOptions& options, const Streams& streams);
/// An owner gives anyone a passphrase of their own, a coach themselves.
Exit set_coach_passphrase(const PracticeOptions& options, const PracticeWords& words,
                          const Streams& streams);

/// Who needs the coach, strongest reason first, with one next action; those with nothing due too.
Exit show_caseload(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams);

/// Every file is all in or not at all; one that can't be read or is held does not stop the others.
Exit bring_in_files(const PracticeOptions& options, const PracticeWords& words,
                    const FileOptions& files, const Streams& streams);
Exit undo_import(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams);

/// What a client wrote, read into diary entries; shown, and stored only when asked to.
Exit jot(const PracticeOptions& options, const PracticeWords& words, const Streams& streams);
/// Keeps a correction, a recipe or a usual food, forgets one, else lists them.
Exit usual_foods(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams);
/// `foods` with a client's own foods.
Exit foods_client(const PracticeOptions& options, const FoodsOptions& asked,
                  const Streams& streams);

/// Adds one with a text, else lists them.
Exit note(const PracticeOptions& options, const PracticeWords& words, const Streams& streams);
/// Adds one with a text and a day, keeps one with its number, else lists them.
Exit promise(const PracticeOptions& options, const PracticeWords& words, const Streams& streams);
/// Answers the escalation of a number, else lists them.
Exit acknowledge(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams);

/// What an outcome goes with, asked of the client that `files` names, over all wears unless a
/// window is asked for.
Exit ask_client(const PracticeOptions& options, const FileOptions& files, const AskOptions& asked,
                const Streams& streams);
/// The meals of the same.
Exit meals_client(const PracticeOptions& options, const FileOptions& files, bool json,
                  const Streams& streams);

/// The review of the client that `files` names, over its window (else the last wear, with what was
/// worn beside it).
Exit review_client(const PracticeOptions& options, const FileOptions& files, const std::string& out,
                   const Streams& streams);

Exit back_up(const PracticeOptions& options, const PracticeWords& words, const Streams& streams);
Exit restore(const PracticeOptions& options, const PracticeWords& words, const Streams& streams);
Exit check_practice(const PracticeOptions& options, const Streams& streams);

}  // namespace tracewright
