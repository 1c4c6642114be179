#include "store/who_may.hpp"

namespace tracewright {

Stored<void> may(CoachTable& coaches, const Acting& acting, Needs needs) {
    for (const auto& [id, coach] : coaches.coaches()) {
        if (id != acting.coach || coach.left) {
            continue;
        }
        const bool enough = needs == Needs::a_look ||
                            (needs == Needs::a_change && coach.role != CoachRole::reader) ||
                            coach.role == CoachRole::owner;
        if (enough) {
            return {};
        }
        return store_error(StoreErrorKind::refused,
                           std::string("found a coach who is ") + name_of(coach.role) +
                               (needs == Needs::an_owner ? ", expected an owner for this"
                                                         : ", expected one who may change things"));
    }
    return store_error(StoreErrorKind::refused,
                       "found no such coach in this practice, expected one who works here");
}

}  // namespace tracewright
