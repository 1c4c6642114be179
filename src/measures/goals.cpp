#include "measures/goals.hpp"

namespace tracewright {

Goals consensus_goals(GoalKind kind) {
    switch (kind) {
        case GoalKind::adults:
            return {kind, 70, 4, 1, 25, 5};
        case GoalKind::older_or_high_risk:
            return {kind, 50, 1, std::nullopt, 50, 10};
        case GoalKind::own:
        case GoalKind::pregnancy:
            break;
    }
    return {kind, std::nullopt, std::nullopt, std::nullopt, std::nullopt, std::nullopt};
}

std::string_view name_of(GoalKind kind) {
    switch (kind) {
        case GoalKind::adults:
            return "adults";
        case GoalKind::older_or_high_risk:
            return "older or high-risk adults";
        case GoalKind::own:
            return "agreed with this client";
        case GoalKind::pregnancy:
            return "pregnancy: the clinic leads";
    }
    return "";
}

}  // namespace tracewright
