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
    std::size_t shares_closed = 0;  ///< open in the backup, which knows of nothing revoked since
};

/// A backup that lies on no disk yet.
struct SealedBackup {
    std::vector<std::uint8_t> bytes;
    std::size_t clients = 0;
};

/// The practice as it is now, encrypted (libsodium's secretstream under a key derived from the
/// practice's; the locked key stands in front, so passphrase or recovery key open it anywhere);
/// decrypted again and checked before it is given. Notes nothing: whoever keeps the bytes does. The
/// list of erased clients is not in it. Format: docs/formats/practice.md.
Stored<SealedBackup> sealed_backup(SqlitePractice& practice);

/// Writes one to a file, reads it back and notes that it was made. The list of erased clients goes
/// beside it as `path`.erased. Replaces a file of that name only when the new one is whole.
Stored<BackupFacts> write_backup(SqlitePractice& practice, const std::string& path,
                                 const Acting& acting);

/// Makes a practice at `target` from a backup: decrypted and checked in memory, clients on any of
/// the erasure lists (beside the backup, beside the target, and `erased_lists`) erased there before
/// anything is written. `exists` if there is a file at `target`.
Stored<BackupFacts> restore_backup(const std::string& backup, const std::string& target,
                                   const Unlocking& unlocking,
                                   const std::vector<std::string>& erased_lists = {});

}  // namespace tracewright
