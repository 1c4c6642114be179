#pragma once

#include "access/sealing.hpp"
#include "diary/meal_photo.hpp"
#include "store/audit_table.hpp"
#include "store/meal_photo_record.hpp"
#include "store/sqlite_database.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Photos of meals in the embedded database: sealed, each beside the meal as it was first written,
/// and found by the one that stands instead of it now. Those of a meal that was struck out are not
/// listed; it comes back with them. Within a caller's transaction; throws DatabaseFailure, and
/// std::runtime_error at one that does not open. `place` is the client's own for sealed text.
class MealPhotoTable {
  public:
    MealPhotoTable(Database& database, const Seal& seal) : database_(database), seal_(seal) {}

    /// In order of adding, without the photos themselves.
    std::vector<MealPhotoLine> lines(std::int64_t client);
    /// One that there is.
    MealPhoto photo(std::int64_t client, std::int64_t number, const std::string& place);
    /// Opens each of the client's, one after the other, those of meals struck out too.
    void check(std::int64_t client, const std::string& place);
    /// To a meal that stands in this client's diary.
    std::int64_t add(std::int64_t client, std::int64_t meal, const std::string& place,
                     const MealPhoto& photo, const Acting& acting);
    /// For good. False if the client has no such photo.
    bool remove(std::int64_t client, std::int64_t number);

  private:
    Database& database_;
    const Seal& seal_;
};

}  // namespace tracewright
