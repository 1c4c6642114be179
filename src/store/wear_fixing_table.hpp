#pragma once

#include "access/sealing.hpp"
#include "store/audit_table.hpp"
#include "store/sqlite_database.hpp"
#include "trace/wear_fixing.hpp"

#include <map>

namespace tracewright {

/// How clients' sensors sat, in the embedded database, sealed; it goes with the wear. Within a
/// caller's transaction; throws DatabaseFailure, and std::runtime_error at one that does not open.
class WearFixingTable {
  public:
    WearFixingTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    /// By the wear's number; wears of which nothing was told are not in it.
    std::map<std::int64_t, WearFixing> fixings(std::int64_t client, const std::string& place);
    /// In place of what was told before; with nothing told, forgets it.
    void put(std::int64_t wear, const std::string& place, const WearFixing& fixing,
             const Acting& acting);

  private:
    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
