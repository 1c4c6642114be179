#pragma once

#include "store/sqlite_database.hpp"
#include "time/instant.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace tracewright {

/// Who does it, and when: given with every change and every look.
struct Acting {
    std::int64_t coach = 0;
    Instant at;
};

/// One line of who did and saw what. Bears no name, note, value or path.
struct AuditLine {
    std::int64_t id = 0;
    Instant at;
    std::int64_t coach = 0;
    std::string deed;  ///< stable: "client_added", "import_stored", "review_seen", ...
    std::optional<std::int64_t> client;
    std::optional<std::int64_t> number;  ///< of the import, promise, escalation meant
};

/// The audit in the embedded database. Lines are added and never rewritten; those about a client
/// go with the client's erasure.
class AuditTable {
  public:
    explicit AuditTable(Database& database);

    void add(const Acting& acting, const std::string& deed,
             std::optional<std::int64_t> client = std::nullopt,
             std::optional<std::int64_t> number = std::nullopt);
    /// Oldest first; of one client, or of all.
    std::vector<AuditLine> lines(std::optional<std::int64_t> client);
    /// Those with a greater number, of all clients.
    std::vector<AuditLine> since(std::int64_t line);
    /// At most so many with a lesser number, newest first; of one client, or of all.
    std::vector<AuditLine> before(std::int64_t line, std::int64_t most,
                                  std::optional<std::int64_t> client);
    /// The newest of a deed.
    std::optional<AuditLine> last_of(const std::string& deed);
    void forget(std::int64_t client);

  private:
    Statement add_;
    Statement of_client_;
    Statement since_;
    Statement before_;
    Statement of_client_before_;
    Statement last_of_;
    Statement forget_;
};

}  // namespace tracewright
