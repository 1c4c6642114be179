#pragma once

#include "access/sealing.hpp"
#include "store/audit_table.hpp"
#include "store/practice_records.hpp"
#include "store/sqlite_database.hpp"

namespace tracewright {

/// Notes, promises, escalations with their answers, and kept findings in the embedded database.
/// Times plain, texts sealed. Within a caller's transaction; throws DatabaseFailure, and
/// std::runtime_error at a text that does not open.
class RecordTable {
  public:
    RecordTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    std::int64_t add_note(std::int64_t client, const std::string& place, const std::string& text,
                          const Acting& acting);
    std::vector<NoteRecord> notes(std::int64_t client, const std::string& place);

    std::int64_t add_promise(std::int64_t client, const std::string& place, const std::string& text,
                             CivilDate due, const Acting& acting);
    std::vector<PromiseRecord> promises(std::int64_t client, const std::string& place);
    /// False if there is no such open promise.
    bool keep_promise(std::int64_t client, std::int64_t promise, const Acting& acting);

    /// One record for each event: new ones are added with `acting.at` as first seen, known ones
    /// take the new document.
    void put_escalation(std::int64_t client, const std::string& place, const std::string& event,
                        const std::string& document, const Acting& acting);
    /// False where it was answered, or is none of this client.
    bool withdraw_escalation(std::int64_t client, std::int64_t escalation);
    std::vector<EscalationRecord> escalations(std::int64_t client, const std::string& place);
    /// False if the client has no such escalation.
    bool acknowledge(std::int64_t client, const std::string& place, std::int64_t escalation,
                     const std::string& by, const std::string& done, const Acting& acting);

    std::int64_t keep_finding(std::int64_t client, const std::string& place, Interval window,
                              const std::string& document, const Acting& acting);
    std::vector<KeptFinding> findings(std::int64_t client, const std::string& place);

  private:
    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
