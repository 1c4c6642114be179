#pragma once

#include "diary/meal_photo.hpp"
#include "store/meal_photo_record.hpp"
#include "store/sqlite_practice.hpp"

#include <memory>
#include <vector>

namespace tracewright {

/// Photos of single meals, by a connection of its own to an open practice.
class MealPhotoBook {
  public:
    explicit MealPhotoBook(const SqlitePractice& practice);
    ~MealPhotoBook();
    MealPhotoBook(const MealPhotoBook&) = delete;
    MealPhotoBook& operator=(const MealPhotoBook&) = delete;

    /// Of meals that stand, in order of adding.
    Stored<std::vector<MealPhotoLine>> lines(std::int64_t client);
    /// `not_found` for none of this number among them.
    Stored<MealPhoto> photo(std::int64_t client, std::int64_t number);
    /// Its number. `not_found` unless the entry stands in the client's diary; `refused` where it is
    /// no meal, has its most photos already, or the photo is longer than is kept.
    Stored<std::int64_t> add(std::int64_t client, std::int64_t entry, const MealPhoto& photo,
                             const Acting& acting);
    /// For good: unlike a diary entry that is struck out, it does not come back.
    Stored<void> remove(std::int64_t client, std::int64_t number, const Acting& acting);

  private:
    struct Tables;
    Stored<std::unique_ptr<Tables>> tables_;
};

}  // namespace tracewright
