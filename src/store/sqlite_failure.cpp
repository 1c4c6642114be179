#include "store/sqlite_failure.hpp"

#include <sqlite3.h>

namespace tracewright {

StoreError store_error_of(const DatabaseFailure& failure) {
    switch (failure.code() & 0xFF) {
        case SQLITE_FULL:
            return {StoreErrorKind::no_room,
                    "found no room left on the disk, expected some: nothing was changed"};
        case SQLITE_READONLY:
        case SQLITE_CANTOPEN:
        case SQLITE_PERM:
        case SQLITE_AUTH:
            return {StoreErrorKind::read_only,
                    "found no right to write to the practice and its folder: nothing was changed"};
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return {StoreErrorKind::busy,
                    "found another program busy with this practice for longer than 10 s: nothing "
                    "was changed, please try again"};
        case SQLITE_NOTADB:
            return {StoreErrorKind::not_a_practice,
                    "found a file that is no practice, expected one made by init"};
        case SQLITE_IOERR: {
            const bool writing =
                failure.code() == SQLITE_IOERR_WRITE || failure.code() == SQLITE_IOERR_FSYNC ||
                failure.code() == SQLITE_IOERR_SHMSIZE || failure.code() == SQLITE_IOERR_TRUNCATE;
            return {writing ? StoreErrorKind::no_room : StoreErrorKind::broken,
                    writing ? "found that the disk takes no more writing: nothing was changed"
                            : "found that the disk does not give what was written"};
        }
        default:
            return {StoreErrorKind::broken,
                    std::string("found the practice's file in disorder (") + failure.what() +
                        "), expected it as written: run check, and restore a backup if it says so"};
    }
}

}  // namespace tracewright
