#include "access/recovery_key.hpp"
#include "cli/practice_commands.hpp"
#include "store/practice_backup.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

Exit init_practice(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams) {
    if (options.practice.empty()) {
        streams.err << "tracewright: found no --practice, expected the file to make\n";
        return Exit::wrong_usage;
    }
    const auto now = told_now(options, streams);
    if (!now) {
        return now.error();
    }
    const auto passphrase = new_passphrase(options);
    if (!passphrase) {
        streams.err << "tracewright: " << passphrase.error() << "\n";
        return Exit::wrong_usage;
    }
    const SecretKey key = SecretKey::drawn();
    const SecretKey recovery = SecretKey::drawn();
    const auto locked =
        LockedPracticeKey::locked(key, *passphrase, recovery, streams.passphrase_work);
    if (!locked) {
        streams.err << "tracewright: " << locked.error() << "\n";
        return Exit::cannot_answer;
    }
    const Coach owner{words.handle.empty() ? "o1" : words.handle, words.name, CoachRole::owner};
    const auto made = SqlitePractice::create(options.practice, key, *locked, owner, *now);
    if (!made) {
        return said(made.error(), streams);
    }
    streams.out << fmt::format(
        "The practice is in {}. Its first coach is {}.\n\n"
        "Recovery key (tried just now; it opens the practice when the passphrase is lost):\n\n"
        "  {}\n\n"
        "Write it on paper and keep it apart from this machine. It is not shown again, and "
        "without\n"
        "it and the passphrase nobody can open the names, notes and diaries.\n",
        options.practice, owner.handle, written_recovery_key(recovery));
    return Exit::done;
}

Exit back_up(const PracticeOptions& options, const PracticeWords& words, const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    if (practice->coach.role == CoachRole::reader) {
        streams.err << "tracewright: found a coach who is reader, expected one who may take the "
                       "practice away\n";
        return Exit::cannot_answer;
    }
    const auto facts = write_backup(*practice->store, words.out, practice->acting);
    if (!facts) {
        return said(facts.error(), streams);
    }
    streams.out << fmt::format(
        "{}: {} clients, {} bytes, encrypted; read back and checked. Keep {} beside it: it makes a "
        "restore erase again who was erased.\n",
        facts->path, facts->clients, facts->bytes, erasure_list_path(facts->path));
    return Exit::done;
}

Exit restore(const PracticeOptions& options, const PracticeWords& words, const Streams& streams) {
    if (options.practice.empty()) {
        streams.err << "tracewright: found no --practice, expected the file to restore to\n";
        return Exit::wrong_usage;
    }
    const auto facts =
        restore_backup(words.out, options.practice, unlocking_of(options), words.erased_lists);
    if (!facts) {
        return said(facts.error(), streams);
    }
    streams.out << fmt::format("{}: {} clients are here again.\n", facts->path, facts->clients);
    if (facts->shares_closed > 0) {
        streams.out << fmt::format(
            "{} that {} open when the backup was made {} closed: whoever may still look is given a "
            "new one.\n",
            facts->shares_closed == 1 ? "One share"
                                      : fmt::format("{} shares", facts->shares_closed),
            facts->shares_closed == 1 ? "was" : "were", facts->shares_closed == 1 ? "is" : "are");
    }
    return Exit::done;
}

Exit check_practice(const PracticeOptions& options, const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto faults = practice->store->faults();
    const auto clients = practice->store->clients();
    if (!faults || !clients) {
        return said(faults ? clients.error() : faults.error(), streams);
    }
    for (const std::string& fault : *faults) {
        streams.out << "- " << fault << "\n";
    }
    streams.out << (faults->empty()
                        ? fmt::format("Everything reads as it was written: {} clients.\n",
                                      clients->size())
                        : fmt::format("{} faults. What is whole still opens; a backup holds the "
                                      "rest.\n",
                                      faults->size()));
    return faults->empty() ? Exit::done : Exit::bad_input;
}

}  // namespace tracewright
