#pragma once

#include "cli/streams.hpp"
#include "store/sqlite_practice.hpp"

#include <memory>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace tracewright {

/// Where the practice is, who opens it and with what, as typed. They may stand before or after the
/// command.
struct PracticeOptions {
    std::string practice;
    std::string passphrase_file;
    std::string recovery_key_file;
    std::string coach;
    std::string as_of;
};

void add_practice_options(CLI::App& app, PracticeOptions& options);

/// A practice that was opened, and as whom.
struct OpenPractice {
    std::unique_ptr<SqlitePractice> store;
    Acting acting;
    Coach coach;
};

/// What time it is: by --as-of, else by the machine's clock. What is wrong is said.
tl::expected<Instant, Exit> told_now(const PracticeOptions& options, const Streams& streams);

/// Opens the practice with the passphrase of the file, of the recovery key's file, or asked at the
/// terminal. The coach is the one named, or the only one. What is wrong is said on `streams.err`.
tl::expected<OpenPractice, Exit> opened_practice(const PracticeOptions& options,
                                                 const Streams& streams);

/// A practice that was opened, and one client of it, by handle or whole name.
struct OpenClient {
    OpenPractice practice;
    std::int64_t client = 0;

    PracticeStore& store() const { return *practice.store; }
};

/// The same with a client. What is wrong is said.
tl::expected<OpenClient, Exit> opened_client(const PracticeOptions& options,
                                             const std::string& client, const Streams& streams);

/// How the options unlock a practice or a backup.
Unlocking unlocking_of(const PracticeOptions& options);

/// The passphrase for a new practice: of the file, or asked twice. Error: a sentence.
tl::expected<std::string, std::string> new_passphrase(const PracticeOptions& options);
/// One that is to stand in another's place, beside the one that opens the practice now.
tl::expected<std::string, std::string> other_passphrase(const std::string& file);

/// Prints the error and says how the command ends: a refusal or a question is 1, a place or file
/// that can't be used is 3.
Exit said(const StoreError& error, const Streams& streams);

/// The first line of a file without its end. Error: a sentence.
tl::expected<std::string, std::string> first_line_of(const std::string& path);

}  // namespace tracewright
