#pragma once

#include "access/sealing.hpp"
#include "store/audit_table.hpp"
#include "store/practice_records.hpp"
#include "store/sqlite_database.hpp"

namespace tracewright {

/// What coaches told of stretches of clients' traces in the embedded database, the reasons sealed.
/// Within a caller's transaction; throws DatabaseFailure, and std::runtime_error at one that does
/// not open.
class StretchTable {
  public:
    StretchTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    /// Those that stand, in order of telling.
    std::vector<StretchRecord> told(std::int64_t client, const std::string& place);
    std::int64_t tell(std::int64_t client, const std::string& place, const ToldStretch& told,
                      const Acting& acting);
    /// False if no telling of this number stands for the client.
    bool take_back(std::int64_t client, std::int64_t telling);

  private:
    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
