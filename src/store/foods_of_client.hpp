#pragma once

#include "diary/client_foods.hpp"
#include "store/practice_store.hpp"

namespace tracewright {

/// What is known of a client's foods, ready to be looked in.
Stored<ClientFoods> foods_of_client(PracticeStore& store, std::int64_t client);

}  // namespace tracewright
