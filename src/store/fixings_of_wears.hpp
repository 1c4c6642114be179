#pragma once

#include "store/practice_store.hpp"

#include <span>
#include <vector>

namespace tracewright {

/// How each of a client's wears sat, in the order given; found by their labels.
Stored<std::vector<WearFixing>> fixings_of(PracticeStore& store, std::int64_t client,
                                           std::span<const Wear> wears);

}  // namespace tracewright
