#pragma once

#include "intake/bring_in.hpp"
#include "intake/plain_scan.hpp"
#include "intake/read_row.hpp"

namespace tracewright {

/// Makes plain rows readings in place, at their moments and with their intervals; false, with rows
/// half done, if any of them needs the careful way: an implausible level, a row repeated or out of
/// order, one in the future or before 2000, a night of a clock change.
bool made_readings(PlainRows& plain, const ReadingPlan& plan, const IntakeOptions& options);

}  // namespace tracewright
