#include "trace/mark.hpp"

namespace tracewright {

const char* name_of(MarkReason reason) {
    switch (reason) {
        case MarkReason::warm_up:
            return "warm-up";
        case MarkReason::impossible_rate:
            return "impossible rate";
        case MarkReason::stuck:
            return "stuck value";
        case MarkReason::failing_last_day:
            return "failing last day";
        case MarkReason::pressure_dip:
            return "may be pressure on the sensor";
        case MarkReason::implausible:
            return "implausible value";
        case MarkReason::told:
            return "marked by a coach";
    }
    return "";
}

}  // namespace tracewright
