#include "store/store_error.hpp"

namespace tracewright {

const char* code_of(StoreErrorKind kind) {
    switch (kind) {
        case StoreErrorKind::not_found:
            return "not_found";
        case StoreErrorKind::exists:
            return "exists";
        case StoreErrorKind::wrong_key:
            return "wrong_key";
        case StoreErrorKind::not_a_practice:
            return "not_a_practice";
        case StoreErrorKind::too_new:
            return "too_new";
        case StoreErrorKind::busy:
            return "busy";
        case StoreErrorKind::no_room:
            return "no_room";
        case StoreErrorKind::read_only:
            return "read_only";
        case StoreErrorKind::unfit_file_system:
            return "unfit_file_system";
        case StoreErrorKind::broken:
            return "broken";
        case StoreErrorKind::refused:
            return "refused";
        case StoreErrorKind::changed_meanwhile:
            return "changed_meanwhile";
    }
    return "broken";
}

}  // namespace tracewright
