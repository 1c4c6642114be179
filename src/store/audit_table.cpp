#include "store/audit_table.hpp"

namespace tracewright {

namespace {

std::vector<AuditLine> rows(Statement& select) {
    std::vector<AuditLine> lines;
    while (select.step()) {
        lines.push_back({select.integer(0), Instant{std::chrono::seconds{select.integer(1)}},
                         select.integer(2), std::string(select.text(3)), select.optional_integer(4),
                         select.optional_integer(5)});
    }
    return lines;
}

}  // namespace

AuditTable::AuditTable(Database& database)
    : add_(database, "INSERT INTO audit(at, coach, deed, client, number) VALUES (?, ?, ?, ?, ?)"),
      of_client_(database,
                 "SELECT id, at, coach, deed, client, number FROM audit WHERE client = ? "
                 "ORDER BY id"),
      since_(database,
             "SELECT id, at, coach, deed, client, number FROM audit WHERE id > ? ORDER BY id"),
      before_(database,
              "SELECT id, at, coach, deed, client, number FROM audit WHERE id < ? "
              "ORDER BY id DESC LIMIT ?"),
      of_client_before_(database,
                        "SELECT id, at, coach, deed, client, number FROM audit WHERE client = ? "
                        "AND id < ? ORDER BY id DESC LIMIT ?"),
      last_of_(database,
               "SELECT id, at, coach, deed, client, number FROM audit WHERE deed = ? "
               "ORDER BY id DESC LIMIT 1"),
      forget_(database, "DELETE FROM audit WHERE client = ?") {}

void AuditTable::add(const Acting& acting, const std::string& deed,
                     std::optional<std::int64_t> client, std::optional<std::int64_t> number) {
    add_.with(acting.at.time_since_epoch().count(), acting.coach, deed, client, number).run();
}

std::vector<AuditLine> AuditTable::lines(std::optional<std::int64_t> client) {
    // Two questions, not one that holds both: only so is the index of the client used.
    return client ? rows(of_client_.with(*client)) : since(0);
}

std::vector<AuditLine> AuditTable::since(std::int64_t line) {
    return rows(since_.with(line));
}

std::vector<AuditLine> AuditTable::before(std::int64_t line, std::int64_t most,
                                          std::optional<std::int64_t> client) {
    return client ? rows(of_client_before_.with(*client, line, most))
                  : rows(before_.with(line, most));
}

std::optional<AuditLine> AuditTable::last_of(const std::string& deed) {
    const auto found = rows(last_of_.with(deed));
    return found.empty() ? std::nullopt : std::optional(found.front());
}

void AuditTable::forget(std::int64_t client) {
    forget_.with(client).run();
}

}  // namespace tracewright
