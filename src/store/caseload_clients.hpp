#pragma once

#include "coaching/caseload.hpp"
#include "store/practice_store.hpp"

#include <vector>

namespace tracewright {

/// What the list of clients looks at, of every client of the practice, as of a moment.
Stored<std::vector<CaseloadClient>> caseload_clients(PracticeStore& store, Instant as_of);

}  // namespace tracewright
