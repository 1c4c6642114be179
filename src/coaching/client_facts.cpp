#include "coaching/client_facts.hpp"

namespace tracewright {

Goals goals_that_hold(const ClientFacts& facts) {
    switch (facts.cautions.pregnancy) {
        case Pregnancy::pregnant:
        case Pregnancy::planning:
        case Pregnancy::unsure:
            return consensus_goals(GoalKind::pregnancy);
        case Pregnancy::no:
        case Pregnancy::not_answered:
            break;
    }
    return facts.goals;
}

}  // namespace tracewright
