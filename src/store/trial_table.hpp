#pragma once

#include "access/sealing.hpp"
#include "store/audit_table.hpp"
#include "store/practice_records.hpp"
#include "store/sqlite_database.hpp"

namespace tracewright {

/// Trials in the embedded database, sealed but for times and days. Within a caller's transaction;
/// throws DatabaseFailure, and std::runtime_error at one that does not open.
class TrialTable {
  public:
    TrialTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    std::vector<TrialRecord> trials(std::int64_t client, const std::string& place);
    std::int64_t keep(std::int64_t client, const std::string& place, const std::string& document,
                      const Acting& acting);
    /// False if the client has no such trial that goes on, not stopped.
    bool tell_day(std::int64_t client, const std::string& place, std::int64_t trial, CivilDate day,
                  const std::string& done, const Acting& acting);
    bool stop(std::int64_t client, const std::string& place, std::int64_t trial,
              const std::string& why, const Acting& acting);

  private:
    Database& database_;
    const Seal& seal_;

    bool goes_on(std::int64_t client, std::int64_t trial);
};

}  // namespace tracewright
