#include "cli/command_line.hpp"

namespace tracewright {

namespace {

CLI::App* verb(CLI::App& parent, const char* name, const char* what) {
    CLI::App* command = parent.add_subcommand(name, what);
    command->fallthrough();  // --practice and its like may stand behind
    return command;
}

CLI::App* with_client(CLI::App* command, PracticeWords& words) {
    command->add_option("CLIENT", words.client, "The client's handle or whole name")->required();
    return command;
}

void describe_clients(CommandLine& line) {
    PracticeWords& words = line.words;
    PracticeVerbs& verbs = line.verbs;
    CLI::App& client = *verb(line.app, "client", "The clients of the practice");
    client.require_subcommand(1);

    verbs.client_add = verb(client, "add", "A new client");
    verbs.client_add->add_option("NAME", words.name, "The client's name; sealed")->required();
    verbs.client_add->add_option("--handle", words.handle,
                                 "A short word that does not tell the name (else c1, c2, ...)");
    verbs.client_add->add_option("--zone", line.files.zone, "The client's home time zone");
    verbs.client_add->add_option("--medicine", words.medicines,
                                 "A medicine as written, or 'none' (may be repeated)");
    verbs.client_add->add_option("--facts", words.facts,
                                 "A JSON file of what is known of the client");

    verbs.client_list = verb(client, "list", "All clients, with the age of their last reading");
    verbs.client_list->add_flag("--json", words.json, "One versioned JSON object");

    verbs.client_show = with_client(verb(client, "show", "What is known of a client"), words);
    verbs.client_show->add_flag("--json", words.json, "The facts alone, as JSON");

    verbs.client_change = with_client(verb(client, "change", "Change what is known"), words);
    verbs.client_change->add_option("--name", words.name, "Another name");
    verbs.client_change->add_option("--handle", words.handle, "Another handle");
    verbs.client_change->add_option("--medicine", words.medicines,
                                    "One more medicine as written, from today (may be repeated)");
    verbs.client_change->add_option("--facts", words.facts,
                                    "A JSON file of changes (merge patch: null forgets)");

    verbs.client_export =
        with_client(verb(client, "export", "All that is kept of a client, in open formats"), words);
    verbs.client_export->add_option("--out", words.out, "The folder to write to")->required();

    verbs.client_erase = with_client(verb(client, "erase", "Erase a client on request"), words);
    verbs.client_erase->add_option("--confirm", words.confirm, "The client's handle once more");
    verbs.client_erase->add_flag("--without-export", words.without_export,
                                 "The client wants no export first");
}

void add_new_passphrase(CLI::App& command, PracticeWords& words) {
    command.add_option("--new-passphrase-file", words.from_file,
                       "A file whose first line is it (else it is asked for twice)");
}

void describe_coaches(CommandLine& line) {
    PracticeWords& words = line.words;
    CLI::App& coach = *verb(line.app, "coach", "The coaches of the practice");
    coach.require_subcommand(1);
    line.verbs.coach_list = verb(coach, "list", "Who works here");
    line.verbs.coach_add = verb(coach, "add", "A new coach");
    line.verbs.coach_add->add_option("HANDLE", words.handle, "A short word")->required();
    line.verbs.coach_add->add_option("NAME", words.name, "The coach's name; sealed")->required();
    line.verbs.coach_change = verb(coach, "change", "Change what a coach may do");
    line.verbs.coach_change->add_option("HANDLE", words.handle, "The coach's handle")->required();
    line.verbs.coach_change->add_option("--name", words.name, "Another name");
    line.verbs.coach_change->add_flag("--left", words.left, "The coach works here no more");
    line.verbs.coach_passphrase =
        verb(coach, "passphrase", "Give a coach a passphrase of their own, to sign in with");
    line.verbs.coach_passphrase->add_option("HANDLE", words.handle, "The coach's handle")
        ->required();
    add_new_passphrase(*line.verbs.coach_passphrase, words);
    for (CLI::App* command : {line.verbs.coach_add, line.verbs.coach_change}) {
        command->add_option("--role", words.role, "owner, coach or reader");
        command->add_option("--licence", words.licence,
                            "none (the default), dietitian, nurse or other");
    }
}

void describe_keys(CommandLine& line) {
    CLI::App& keys = *verb(line.app, "keys", "The practice's passphrase and recovery key");
    keys.require_subcommand(1);
    line.verbs.keys_passphrase =
        verb(keys, "passphrase", "Put another passphrase in the place of the practice's");
    add_new_passphrase(*line.verbs.keys_passphrase, line.words);
    line.verbs.keys_recovery = verb(
        keys, "recovery", "Make a new recovery key and print it once; the old one opens no more");
}

void describe_imports(CommandLine& line) {
    PracticeWords& words = line.words;
    PracticeVerbs& verbs = line.verbs;
    verbs.bring_in = with_client(
        verb(line.app, "bring-in", "Store a client's files, each whole or not at all"), words);
    add_intake_options(*verbs.bring_in, line.files);
    verbs.bring_in->add_flag("--preview", words.preview, "Say what would be stored; store nothing");
    verbs.bring_in->add_flag("--this-client", words.this_client,
                             "Yes, a file that was held is this client's");
    verbs.undo = with_client(verb(line.app, "undo", "Undo the client's newest import"), words);
}

void describe_diary(CommandLine& line) {
    PracticeWords& words = line.words;
    PracticeVerbs& verbs = line.verbs;
    verbs.jot = with_client(
        verb(line.app, "jot", "Read what a client wrote into diary entries; shows them first"),
        words);
    verbs.jot->add_option("TEXT", words.text, "The message, as the client wrote it");
    verbs.jot->add_option("--from", words.from_file, "A file with the message");
    verbs.jot->add_option("--day", words.day, "The day it tells of (else today)");
    verbs.jot->add_flag("--keep", words.keep, "Store the entries; 'undo' takes them back");

    verbs.usual = with_client(
        verb(line.app, "usual", "What a client usually eats: corrections, recipes, foods"), words);
    CLI::App& usual = *verbs.usual;
    usual.add_option("--word", words.word, "What the client writes, such as 'toast'");
    usual.add_option("--is", words.is, "What that is, such as '1 slice of rye bread'");
    usual.add_option("--recipe", words.recipe, "The name of a recipe");
    usual.add_option("--of", words.of,
                     "Its foods with portions: '400 g lentils, 1 tbsp olive oil'");
    usual.add_option("--portions", words.portions, "How many portions it gives")
        ->capture_default_str();
    usual.add_option("--food", words.food, "The name of a food that no table has");
    usual.add_option("--portion", words.portion, "Its household portion, such as '1 slice'");
    usual.add_option("--grams", words.grams, "What that weighs");
    usual.add_option("--carbohydrate", words.carbohydrate, "Grams of carbohydrate in it");
    auto* without = usual.add_flag("--available", words.available,
                                   "That carbohydrate is without fibre (European labels)");
    usual.add_flag("--total", words.total, "That carbohydrate is with fibre (US labels)")
        ->excludes(without);
    usual.add_option("--fibre", words.fibre, "Grams of fibre in it");
    usual.add_option("--energy", words.energy, "Its energy in kcal");
    usual.add_option("--forget", words.forget, "The number of one to forget");
}

void describe_wear(CommandLine& line) {
    WearOptions& options = line.wear_options;
    line.verbs.wear =
        verb(line.app, "wear", "How a sensor sat and why it ended, or list the client's wears");
    CLI::App& wear = *line.verbs.wear;
    wear.add_option("CLIENT", options.client, "The client's handle or whole name")->required();
    wear.add_option("NUMBER", options.number, "The number of the wear");
    wear.add_option("--overpatch", options.overpatch,
                    "Whether an adhesive cover was put over it: yes, no or unknown");
    wear.add_option("--site", options.site, "Where it sat, such as 'left arm'; '' forgets");
    wear.add_option("--end", options.end,
                    "planned, fell-off, sensor-failed, removed, still-on or not-told");
}

void describe_share(CommandLine& line) {
    ShareOptions& options = line.share_options;
    line.verbs.share =
        verb(line.app, "share",
             "Give a narrow view to one person, revoke it, or list them with every look");
    CLI::App& share = *line.verbs.share;
    share.add_option("CLIENT", options.client, "The client's handle or whole name")->required();
    share.add_option("--to", options.to, "Whom it is for, as the client says; sealed");
    share.add_option("--for", options.purpose, "What it is for; sealed");
    share.add_option("--kinds", options.kinds,
                     "What they see, with commas between (else hours in range and lows): hours in "
                     "range, lows, day sheets, diary, food amounts, mood, notes, "
                     "weight, medicines, letter");
    share.add_option("--days", options.days, "How many days of data, back from each look")
        ->check(CLI::Range(1, 366))
        ->capture_default_str();
    auto* until = share.add_option("--until", options.until, "Its last day (else in 30 days)");
    share
        .add_option("--page", options.page,
                    "Write a dated page to this file instead: a copy that can't be taken back")
        ->excludes(until);
    share.add_option("--revoke", options.revoke, "The number of one to close for good");
    share.add_flag("--json", options.json, "The list as one versioned JSON object");
}

void describe_records(CommandLine& line) {
    PracticeWords& words = line.words;
    PracticeVerbs& verbs = line.verbs;
    verbs.note = with_client(verb(line.app, "note", "Note something, or list the notes"), words);
    verbs.note->add_option("TEXT", words.text, "What to note");

    verbs.promise = with_client(
        verb(line.app, "promise", "Promise something, mark it kept, or list the promises"), words);
    verbs.promise->add_option("TEXT", words.text, "What is promised");
    verbs.promise->add_option("--by", words.due, "By which day");
    verbs.promise->add_option("--kept", words.kept, "The number of the promise that was kept");

    verbs.acknowledge =
        with_client(verb(line.app, "acknowledge", "Answer an escalation, or list them"), words);
    verbs.acknowledge->add_option("NUMBER", words.number, "The number of the escalation");
    verbs.acknowledge->add_option("--by", words.by, "Who answered");
    verbs.acknowledge->add_option("--done", words.done,
                                  "What was done; it stands in the letter to the prescriber");
}

void describe_serve(CommandLine& line) {
    ServeWords& words = line.serve_words;
    line.verbs.serve = verb(line.app, "serve", "Serve the practice to a browser on this machine");
    CLI::App& serve = *line.verbs.serve;
    serve.add_option("--port", words.port, "The port; 0: one that is free")->capture_default_str();
    serve
        .add_option("--address", words.address,
                    "The address to listen at; beyond this machine only with a certificate")
        ->capture_default_str();
    auto* key = serve.add_option("--key", words.key, "The certificate's private key (PEM)");
    serve
        .add_option("--certificate", words.certificate,
                    "A certificate with its chain (PEM), of your own")
        ->needs(key);
    serve.add_option("--name", words.names,
                     "A name by which browsers call this machine (may be repeated)");
}

}  // namespace

void describe_practice_commands(CommandLine& line) {
    PracticeWords& words = line.words;
    PracticeVerbs& verbs = line.verbs;
    add_practice_options(line.app, line.practice);

    verbs.init = verb(line.app, "init", "Make a practice; prints its recovery key once");
    verbs.init->add_option("NAME", words.name, "The name of its first coach")->required();
    verbs.init->add_option("--handle", words.handle, "That coach's handle (else o1)");

    describe_clients(line);
    describe_coaches(line);
    describe_keys(line);
    describe_imports(line);
    describe_diary(line);
    describe_wear(line);
    describe_share(line);
    describe_records(line);

    verbs.caseload =
        verb(line.app, "caseload",
             "Who needs the coach, in order, each with the reason and one next action");
    verbs.caseload->add_flag("--json", words.json, "One versioned JSON object");

    verbs.remind =
        verb(line.app, "remind", "What is due between wears, with words to copy; nothing is sent");
    RemindOptions& remind = line.remind_options;
    verbs.remind->add_option("CLIENT", remind.client, "Of one client (else of all)");
    verbs.remind->add_flag("--rules", remind.rules, "Show the practice's rules");
    verbs.remind->add_option("--quiet-from", remind.quiet_from, "Quiet hours begin, such as 21:00");
    verbs.remind->add_option("--quiet-to", remind.quiet_to, "Quiet hours end, such as 08:00");
    verbs.remind->add_option("--silent-hours", remind.silent_hours,
                             "Hours without data on a wear before asking");
    verbs.remind->add_option("--most-a-day", remind.most_a_day, "Texts to one client a day");
    verbs.remind->add_option("--off", remind.off, "A kind not to remind of (may be repeated)");
    verbs.remind->add_option("--on", remind.on, "A kind to remind of again");
    verbs.remind->add_flag("--json", remind.json, "One versioned JSON object");

    verbs.writing = verb(line.app, "writing",
                         "Show or set how the practice writes dates, times of day and glucose");
    WritingOptions& writing = line.writing_options;
    verbs.writing->add_option("--dates", writing.dates, "day-first or month-first");
    verbs.writing->add_option("--hours", writing.hours, "24 or 12");
    verbs.writing->add_option("--glucose", writing.glucose,
                              "mg/dL or mmol/L, for a new client who was not asked");

    describe_serve(line);
    verbs.backup = verb(line.app, "backup", "Write the practice into one encrypted file");
    verbs.backup->add_option("FILE", words.out, "The file to write")->required();
    verbs.restore = verb(line.app, "restore", "Make a practice from a backup");
    verbs.restore->add_option("FILE", words.out, "The backup")->required();
    verbs.restore->add_option("--erased", words.erased_lists,
                              "More lists of erased clients (those beside the backup and the "
                              "practice are read by themselves)");
    verbs.check = verb(line.app, "check", "Read everything and say whether it is as written");
}

}  // namespace tracewright
