#pragma once

#include "diary/finger_prick.hpp"
#include "intake/message_parts.hpp"

namespace tracewright {

/// What a part of a message says a meter or sensor showed instead of a number, and whether that is
/// in doubt.
struct ShownLimit {
    MeterLimit limit = MeterLimit::none;
    bool sure = false;
};

/// "finger prick LO", "7:30 LO", "glucose low", "sensor LOW", "meter says HI". A low counts with
/// any word of measuring beside it, or alone behind a time; a high, which is also said of much
/// else, only in capitals or beside the meter itself. "low carb" and the like are none. Sure: in
/// capitals beside the meter or the finger.
ShownLimit shown_limit(const MessagePart& part);

}  // namespace tracewright
