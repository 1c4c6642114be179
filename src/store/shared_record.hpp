#pragma once

#include "coaching/shared_page.hpp"
#include "store/practice_store.hpp"

namespace tracewright {

/// What a share's page reads of its client at the moment `now`: the window's wears and diary by the
/// client's clock, and for the letter what stands unanswered. `coach`: who gave the share.
Stored<SharedRecord> shared_record(PracticeStore& store, const ClientRecord& client,
                                   const Share& share, std::int64_t coach, Instant now);

}  // namespace tracewright
