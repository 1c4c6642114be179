#include "cli/practice_options.hpp"

#include "access/recovery_key.hpp"
#include "cli/file_options.hpp"
#include "cli/hidden_line.hpp"

#include <CLI/CLI.hpp>

#include <fstream>
#include <ostream>

namespace tracewright {

namespace {

constexpr std::size_t shortest_passphrase = 10;

tl::expected<SecretKey, std::string> by_recovery_key(const std::string& file,
                                                     const LockedPracticeKey& locked) {
    return first_line_of(file)
        .and_then([](const std::string& text) { return recovery_key_read(text); })
        .and_then([&](const SecretKey& key) { return locked.opened_by_recovery(key); });
}

tl::expected<CoachRecord, std::string> coach_named(const std::vector<CoachRecord>& coaches,
                                                   const std::string& handle) {
    std::vector<const CoachRecord*> here;
    for (const CoachRecord& record : coaches) {
        if (!record.coach.left && (handle.empty() || record.coach.handle == handle)) {
            here.push_back(&record);
        }
    }
    if (here.size() == 1) {
        return *here.front();
    }
    return tl::make_unexpected(std::string(
        here.empty() ? "found no such coach in this practice, expected --coach HANDLE of one"
                     : "found several coaches in this practice, expected --coach HANDLE"));
}

}  // namespace

void add_practice_options(CLI::App& app, PracticeOptions& options) {
    app.add_option("--practice", options.practice, "The practice: one file with all its clients");
    app.add_option("--passphrase-file", options.passphrase_file,
                   "A file whose first line is the passphrase (else it is asked for)");
    app.add_option("--recovery-key-file", options.recovery_key_file,
                   "A file whose first line is the recovery key, instead of the passphrase");
    app.add_option("--coach", options.coach,
                   "The handle of the coach who does it (needed where there are several)");
    app.add_option("--as-of", options.as_of, "What time it is (else the machine's clock)");
}

tl::expected<std::string, std::string> first_line_of(const std::string& path) {
    std::ifstream file(path);
    std::string line;
    if (!std::getline(file, line)) {
        return tl::make_unexpected(path + ": found no line to read, expected a file with one");
    }
    while (!line.empty() && (line.back() == '\r' || line.back() == '\n')) {
        line.pop_back();
    }
    return line;
}

Unlocking unlocking_of(const PracticeOptions& options) {
    return [options](const LockedPracticeKey& locked) -> tl::expected<SecretKey, std::string> {
        if (!options.recovery_key_file.empty()) {
            return by_recovery_key(options.recovery_key_file, locked);
        }
        const auto passphrase = options.passphrase_file.empty()
                                    ? hidden_line("Passphrase of the practice: ")
                                    : first_line_of(options.passphrase_file);
        if (!passphrase) {
            return tl::make_unexpected(passphrase.error());
        }
        return locked.opened_by_passphrase(*passphrase);
    };
}

tl::expected<std::string, std::string> new_passphrase(const PracticeOptions& options) {
    return other_passphrase(options.passphrase_file);
}

tl::expected<std::string, std::string> other_passphrase(const std::string& file) {
    auto passphrase = file.empty() ? hidden_line("A new passphrase: ") : first_line_of(file);
    if (!passphrase) {
        return passphrase;
    }
    if (passphrase->size() < shortest_passphrase) {
        return tl::make_unexpected(
            std::string("found a passphrase of fewer than 10 signs, expected a longer one: several "
                        "words are easy to keep in mind and hard to guess"));
    }
    if (file.empty()) {
        const auto again = hidden_line("The same once more: ");
        if (!again || *again != *passphrase) {
            return tl::make_unexpected(std::string("found two that differ; nothing was made"));
        }
    }
    return passphrase;
}

tl::expected<Instant, Exit> told_now(const PracticeOptions& options, const Streams& streams) {
    if (options.as_of.empty()) {
        return streams.now;
    }
    const auto told = time_on_command_line(options.as_of, ZoneHistory(Zone::floating()));
    if (!told) {
        streams.err << "tracewright: " << told.error() << "\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    return *told;
}

tl::expected<OpenPractice, Exit> opened_practice(const PracticeOptions& options,
                                                 const Streams& streams) {
    if (options.practice.empty()) {
        streams.err << "tracewright: found no --practice, expected the practice's file\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    const auto now = told_now(options, streams);
    if (!now) {
        return tl::make_unexpected(now.error());
    }
    auto store = SqlitePractice::open(options.practice, unlocking_of(options));
    if (!store) {
        return tl::make_unexpected(said(store.error(), streams));
    }
    const auto coaches = (*store)->coaches();
    if (!coaches) {
        return tl::make_unexpected(said(coaches.error(), streams));
    }
    const auto coach = coach_named(*coaches, options.coach);
    if (!coach) {
        streams.err << "tracewright: " << coach.error() << "\n";
        return tl::make_unexpected(Exit::wrong_usage);
    }
    return OpenPractice{std::move(*store), {coach->id, *now}, coach->coach};
}

tl::expected<OpenClient, Exit> opened_client(const PracticeOptions& options,
                                             const std::string& client, const Streams& streams) {
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return tl::make_unexpected(practice.error());
    }
    const auto id = practice->store->client_called(client);
    if (!id) {
        return tl::make_unexpected(said(id.error(), streams));
    }
    return OpenClient{std::move(*practice), *id};
}

Exit said(const StoreError& error, const Streams& streams) {
    streams.err << "tracewright: " << error.sentence << " [" << code_of(error.kind) << "]\n";
    switch (error.kind) {
        case StoreErrorKind::not_found:
        case StoreErrorKind::exists:
        case StoreErrorKind::wrong_key:
        case StoreErrorKind::refused:
        case StoreErrorKind::busy:
        case StoreErrorKind::changed_meanwhile:
            return Exit::cannot_answer;
        case StoreErrorKind::not_a_practice:
        case StoreErrorKind::too_new:
        case StoreErrorKind::no_room:
        case StoreErrorKind::read_only:
        case StoreErrorKind::unfit_file_system:
        case StoreErrorKind::broken:
            break;
    }
    return Exit::bad_input;
}

}  // namespace tracewright
