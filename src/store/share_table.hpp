#pragma once

#include "access/sealing.hpp"
#include "access/share_token.hpp"
#include "store/audit_table.hpp"
#include "store/practice_records.hpp"
#include "store/sqlite_database.hpp"

#include <optional>

namespace tracewright {

/// Shares in the embedded database: whom they were given to, for what, and which data are sealed;
/// times and looks are plain. Records come without the client's handle, which may change. Within a
/// caller's transaction; throws DatabaseFailure, and std::runtime_error at one that does not open.
class ShareTable {
  public:
    ShareTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    std::vector<ShareRecord> shares(std::int64_t client, const std::string& place);
    std::int64_t give(std::int64_t client, const std::string& place, const Share& share,
                      const ShareTokenHash& token, const Acting& acting);
    /// False if the client has no such share that is not revoked yet.
    bool revoke(std::int64_t client, std::int64_t share, const Acting& acting);
    /// The client whose share a token opens, and its number.
    struct Opened {
        std::int64_t client = 0;
        std::int64_t share = 0;
    };
    std::optional<Opened> opened_by(const ShareTokenHash& token);
    std::optional<ShareRecord> share(std::int64_t share, const std::string& place);
    /// False if there is no such share.
    bool note_look(std::int64_t share, const ShareLook& look);

  private:
    ShareRecord record_of(const Statement& row, const std::string& place) const;

    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
