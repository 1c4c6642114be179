#include "store/client_food_table.hpp"

#include "store/food_document.hpp"
#include "store/stored_column.hpp"

#include <stdexcept>

namespace tracewright {

std::vector<FoodRecord> ClientFoodTable::foods(std::int64_t client, const std::string& place) {
    Statement all(database_,
                  "SELECT id, at, coach, sealed_food FROM client_food WHERE client = ? "
                  "ORDER BY id");
    std::vector<FoodRecord> foods;
    for (all.with(client); all.step();) {
        auto food = food_read(opened_text(seal_, all.blob(3), place + " food"));
        if (!food) {
            throw std::runtime_error(food.error());
        }
        foods.push_back(
            {all.integer(0), instant(all.integer(1)), all.integer(2), std::move(*food)});
    }
    return foods;
}

std::int64_t ClientFoodTable::keep(std::int64_t client, const std::string& place,
                                   const ClientFood& food, const Acting& acting) {
    const auto sameness = seal_.fingerprint(called(food));
    const std::span<const std::uint8_t> same(sameness);
    Statement put(database_,
                  "INSERT INTO client_food(client, at, coach, sameness, sealed_food) "
                  "VALUES (?, ?, ?, ?, ?) ON CONFLICT(client, sameness) DO UPDATE "
                  "SET at = excluded.at, coach = excluded.coach, "
                  "sealed_food = excluded.sealed_food");
    put.with(client, seconds(acting.at), acting.coach, same,
             seal_.sealed(food_document(food), place + " food"))
        .run();
    Statement number(database_, "SELECT id FROM client_food WHERE client = ? AND sameness = ?");
    number.with(client, same).step();
    return number.integer(0);
}

bool ClientFoodTable::forget(std::int64_t client, std::int64_t food) {
    Statement known(database_, "SELECT 1 FROM client_food WHERE client = ? AND id = ?");
    if (!known.with(client, food).step()) {
        return false;
    }
    Statement remove(database_, "DELETE FROM client_food WHERE id = ?");
    remove.with(food).run();
    return true;
}

}  // namespace tracewright
