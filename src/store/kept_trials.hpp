#pragma once

#include "coaching/kept_trial.hpp"
#include "store/practice_store.hpp"

#include <array>
#include <vector>

namespace tracewright {

/// How what was done on a day of a trial is written, in the order of ArmDone.
inline constexpr std::array arms_done = {"", "a", "b", "neither"};

/// The trials kept with a client, dates by the client's clock. Error: a document that can't be
/// read.
Stored<std::vector<KeptTrial>> kept_trials(PracticeStore& store, std::int64_t client,
                                           const ZoneHistory& clock);

}  // namespace tracewright
