#pragma once

#include "coaching/licence.hpp"

#include <cstdint>
#include <string>

namespace tracewright {

/// What a coach may do in the practice: an owner also adds coaches and erases clients; a reader
/// changes nothing.
enum class CoachRole : std::uint8_t { owner, coach, reader };

struct Coach {
    std::string handle;  ///< a short word without the name in it: stands in the audit
    std::string name;
    CoachRole role = CoachRole::coach;
    Licence licence = Licence::none;
    bool left = false;  ///< works here no more: kept for the audit's sake
};

const char* name_of(CoachRole role);
const char* name_of(Licence licence);

}  // namespace tracewright
