#pragma once

#include "coaching/trial_reading.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tracewright {

/// A trial that is kept with a client: as it was drawn, and what was told of its days so far.
struct KeptTrial {
    std::int64_t number = 0;
    Trial trial;
    DoneOn done;
    std::optional<CivilDate> stopped_on;
    std::string stopped_because;
};

enum class TrialState { planned, running, ended, stopped };
const char* name_of(TrialState state);
/// Ended: from the day after the last one on, when a night's value is there too.
TrialState state_of(const KeptTrial& kept, CivilDate today);
/// Planned or running: while it does, no other is drawn.
bool goes_on(const KeptTrial& kept, CivilDate today);

/// The one that goes on; null if none does.
const KeptTrial* one_that_goes_on(std::span<const KeptTrial> trials, CivilDate today);

/// What the lot says for a day: true A, false B; empty: none of its days.
std::optional<bool> allotted_a(const Trial& trial, CivilDate day);
/// Days before today of which nothing was told, ascending.
std::vector<CivilDate> not_told(const KeptTrial& kept, CivilDate today);

/// As read_trial with what was told; of a stopped one that it was stopped, when and why, and no
/// verdict.
TrialReading read_kept(const KeptTrial& kept, const ReviewInput& input);

}  // namespace tracewright
