#include "store/foods_of_client.hpp"

namespace tracewright {

Stored<ClientFoods> foods_of_client(PracticeStore& store, std::int64_t client) {
    return store.foods(client).map([](std::vector<FoodRecord> records) {
        ClientFoods foods;
        for (FoodRecord& record : records) {
            foods.add(std::move(record.food));
        }
        return foods;
    });
}

}  // namespace tracewright
