#include "access/coach.hpp"

namespace tracewright {

const char* name_of(Role role) {
    switch (role) {
        case Role::owner:
            return "owner";
        case Role::coach:
            return "coach";
        case Role::reader:
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
