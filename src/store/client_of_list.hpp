#pragma once

#include "coaching/caseload.hpp"
#include "store/practice_store.hpp"

namespace tracewright {

/// What the list of clients looks at of one, out of the store: the last 30 days, what stands open,
/// what the days of the last review show to be told, trials, and when the coach looked last.
Stored<CaseloadClient> client_of_list(PracticeStore& store, const ClientLine& line, Instant as_of);

}  // namespace tracewright
