#pragma once

#include "access/sealing.hpp"
#include "store/audit_table.hpp"
#include "store/practice_records.hpp"
#include "store/sqlite_database.hpp"

namespace tracewright {

/// What is known of clients' foods in the embedded database, sealed but for its times. Within a
/// caller's transaction; throws DatabaseFailure, and std::runtime_error at one that does not open.
class ClientFoodTable {
  public:
    ClientFoodTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    std::vector<FoodRecord> foods(std::int64_t client, const std::string& place);
    /// In place of the one so called already, under its number.
    std::int64_t keep(std::int64_t client, const std::string& place, const ClientFood& food,
                      const Acting& acting);
    /// False if the client has none of this number.
    bool forget(std::int64_t client, std::int64_t food);

  private:
    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
