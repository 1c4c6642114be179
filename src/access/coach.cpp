#include "access/coach.hpp"

namespace tracewright {

const char* name_of(CoachRole role) {
    switch (role) {
        case CoachRole::owner:
            return "owner";
        case CoachRole::coach:
            return "coach";
        case CoachRole::reader:
            return "reader";
    }
    return "reader";
}

const char* name_of(Licence licence) {
    switch (licence) {
        case Licence::none:
            return "none";
        case Licence::dietitian:
            return "dietitian";
        case Licence::nurse:
            return "nurse";
        case Licence::other:
            return "other";
    }
    return "none";
}

}  // namespace tracewright
