#pragma once

#include "coaching/care_input.hpp"
#include "coaching/gates.hpp"
#include "coaching/paper.hpp"
#include "coaching/trial.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What closes a trial's papers now: the gates of its template, asked again on the day of printing,
/// for what was open when it was drawn may be closed since. A trial whose template is not known
/// meets the gates of everything. Empty: they may be printed.
std::vector<Gate> gates_before_trial_papers(const Trial& trial, const CareInput& care);

/// The client's page: which day which arm by lot, what to do, a box to tick, what if it can't be
/// done, when to stop, whom to ring. One sheet up to 10 pairs at least, a longer one goes on
/// overleaf. `of_whom`: the client's name; empty: none.
Paper trial_calendar_page(const Trial& trial, const CareInput& care,
                          const std::string& of_whom = {});

}  // namespace tracewright
