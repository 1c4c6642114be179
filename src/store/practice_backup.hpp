#pragma once

#include "store/sqlite_practice.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace tracewright {

struct BackupFacts {
    std::string path;
    std::uint64_t bytes = 0;
    std::size_t clients = 0;
};

/// Writes the practice as it is now into one encrypted file (libsodium's secretstream under a key
/// derived from the practice's; the locked key stands in front, so passphrase or recovery key open
/// it anywhere), reads it back, decrypts it and checks it before it says so. The list of erased
/// clients goes beside it as `path`.erased. Replaces a file of that name only when the new one is
/// whole. Format: docs/formats/practice.md.
Stored<BackupFacts> write_backup(SqlitePractice& practice, const std::string& path,
                                 const Acting& acting);

/// Makes a practice at `target` from a backup: decrypted and checked in memory, clients on any of
/// the erasure lists (beside the backup, beside the target, and `erased_lists`) erased there before
/// anything is written. `exists` if there is a file at `target`.
Stored<BackupFacts> restore_backup(const std::string& backup, const std::string& target,
                                   const Unlocking& unlocking,
                                   const std::vector<std::string>& erased_lists = {});

}  // namespace tracewright
