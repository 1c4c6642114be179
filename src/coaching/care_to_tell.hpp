#pragma once

#include "coaching/care_input.hpp"

#include <string>
#include <vector>

namespace tracewright {

/// What a review says that the clinic or prescriber is to be told and that is no event of the
/// ladder: it stands until their answer is written down.
struct CareToTell {
    Instant since;
    std::string why;   ///< what was seen
    std::string next;  ///< whom to ask or tell
};

/// What does not fit the type told; little food beside an SGLT2 inhibitor (safety rules 7 and 8).
std::vector<CareToTell> care_to_tell(const CareInput& input);

}  // namespace tracewright
