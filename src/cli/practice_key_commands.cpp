#include "access/recovery_key.hpp"
#include "cli/practice_commands.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

Exit change_passphrase(const PracticeOptions& options, const PracticeWords& words,
                       const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto passphrase = other_passphrase(words.from_file);
    if (!passphrase) {
        streams.err << "tracewright: " << passphrase.error() << "\n";
        return Exit::wrong_usage;
    }
    const auto changed = practice->store->change_passphrase(*passphrase, practice->acting);
    if (!changed) {
        return said(changed.error(), streams);
    }
    streams.out << "The practice has another passphrase; the recovery key and the coaches' own "
                   "passphrases stay.\nBackups made before still open with the old one.\n";
    return Exit::done;
}

Exit change_recovery_key(const PracticeOptions& options, const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const SecretKey recovery = SecretKey::drawn();
    const auto changed = practice->store->change_recovery_key(recovery, practice->acting);
    if (!changed) {
        return said(changed.error(), streams);
    }
    streams.out << fmt::format(
        "The new recovery key (tried just now; it opens the practice when the passphrase is "
        "lost):\n\n  {}\n\n"
        "Write it on paper and keep it apart from this machine. It is not shown again.\n"
        "The one before opens this practice no more. Backups made until now open with that one, "
        "not with this:\nmake a new backup, and destroy the old paper when the old backups are "
        "gone.\n",
        written_recovery_key(recovery));
    return Exit::done;
}

}  // namespace tracewright
