#include "store/audit_table.hpp"

namespace tracewright {

AuditTable::AuditTable(Database& database)
    : add_(database, "INSERT INTO audit(at, coach, deed, client, number) VALUES (?, ?, ?, ?, ?)"),
      lines_(database,
             "SELECT id, at, coach, deed, client, number FROM audit "
             "WHERE ?1 IS NULL OR client = ?1 ORDER BY id"),
      forget_(database, "DELETE FROM audit WHERE client = ?") {}

void AuditTable::add(const Acting& acting, const std::string& deed,
                     std::optional<std::int64_t> client, std::optional<std::int64_t> number) {
    add_.with(acting.at.time_since_epoch().count(), acting.coach, deed, client, number).run();
}

std::vector<AuditLine> AuditTable::lines(std::optional<std::int64_t> client) {
    std::vector<AuditLine> lines;
    for (lines_.with(client); lines_.step();) {
        lines.push_back({lines_.integer(0), Instant{std::chrono::seconds{lines_.integer(1)}},
                         lines_.integer(2), std::string(lines_.text(3)), lines_.optional_integer(4),
                         lines_.optional_integer(5)});
    }
    return lines;
}

void AuditTable::forget(std::int64_t client) {
    forget_.with(client).run();
}

}  // namespace tracewright
