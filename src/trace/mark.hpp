#pragma once

#include "time/instant.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// Why a stretch is suspect. Marked, never deleted; every mark can be taken back.
enum class MarkReason {
    warm_up,           ///< the first hour of a wear
    impossible_rate,   ///< a step that blood glucose can't take
    stuck,             ///< the same value again and again
    failing_last_day,  ///< the sensor's last day, unlike the days before
    pressure_dip,      ///< only by the rules of pressure_dip.hpp, never from files alone
    implausible,       ///< outside 20 to 600 mg/dL (1.1 to 33.3 mmol/L)
    told               ///< by a coach
};

const char* name_of(MarkReason reason);

/// One suspect stretch of one wear, with what was seen there in plain words. A coach's reason
/// is no part of it: marks stand on papers and shares.
struct Mark {
    MarkReason reason;
    Interval stretch;
    std::string seen;
};

}  // namespace tracewright
