#include "store/meal_photo_table.hpp"

#include "store/stored_column.hpp"

namespace tracewright {

namespace {

// From each meal that has photos to the entry that stands instead of it now.
constexpr const char* standing_lines =
    "WITH RECURSIVE stands(meal, entry) AS ("
    "SELECT meal, meal FROM meal_photo WHERE client = ?1 UNION "
    "SELECT stands.meal, later.id FROM stands JOIN diary_entry AS later "
    "ON later.instead_of = stands.entry) "
    "SELECT photo.id, photo.at, photo.coach, entry.id, entry.at FROM meal_photo AS photo "
    "JOIN stands ON stands.meal = photo.meal JOIN diary_entry AS entry ON entry.id = stands.entry "
    "WHERE photo.client = ?1 AND entry.struck = 0 AND NOT EXISTS "
    "(SELECT 1 FROM diary_entry AS later WHERE later.instead_of = entry.id) ORDER BY photo.id";

}  // namespace

std::vector<MealPhotoLine> MealPhotoTable::lines(std::int64_t client) {
    Statement all(database_, standing_lines);
    std::vector<MealPhotoLine> lines;
    for (all.with(client); all.step();) {
        lines.push_back({all.integer(0), instant(all.integer(1)), all.integer(2), all.integer(3),
                         instant(all.integer(4))});
    }
    return lines;
}

MealPhoto MealPhotoTable::photo(std::int64_t client, std::int64_t number,
                                const std::string& place) {
    Statement one(database_, "SELECT sealed_photo FROM meal_photo WHERE client = ? AND id = ?");
    one.with(client, number).step();
    return MealPhoto{opened_text(seal_, one.blob(0), place + " meal photo")};
}

void MealPhotoTable::check(std::int64_t client, const std::string& place) {
    Statement all(database_, "SELECT sealed_photo FROM meal_photo WHERE client = ?");
    for (all.with(client); all.step();) {
        opened_text(seal_, all.blob(0), place + " meal photo");
    }
}

std::int64_t MealPhotoTable::add(std::int64_t client, std::int64_t meal, const std::string& place,
                                 const MealPhoto& photo, const Acting& acting) {
    Statement put(database_,
                  "WITH RECURSIVE was(id, instead_of) AS ("
                  "SELECT id, instead_of FROM diary_entry WHERE id = ?1 UNION "
                  "SELECT earlier.id, earlier.instead_of FROM was JOIN diary_entry AS earlier "
                  "ON earlier.id = was.instead_of) "
                  "INSERT INTO meal_photo(client, meal, at, coach, sealed_photo) "
                  "SELECT ?2, id, ?3, ?4, ?5 FROM was WHERE instead_of IS NULL RETURNING id");
    put.with(meal, client, seconds(acting.at), acting.coach,
             seal_.sealed(photo.jpeg, place + " meal photo"))
        .step();
    const std::int64_t number = put.integer(0);
    put.with();
    return number;
}

bool MealPhotoTable::remove(std::int64_t client, std::int64_t number) {
    Statement gone(database_, "DELETE FROM meal_photo WHERE client = ? AND id = ? RETURNING id");
    const bool there = gone.with(client, number).step();
    gone.with();
    return there;
}

}  // namespace tracewright
