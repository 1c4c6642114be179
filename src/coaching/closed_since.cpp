#include "coaching/closed_since.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/trial_calendar_page.hpp"

namespace tracewright {

namespace {

std::string sentences_of(const std::vector<Gate>& gates) {
    std::string sentences;
    for (const Gate& gate : gates) {
        sentences += " " + gate.for_coach.record;
    }
    return sentences;
}

}  // namespace

ClosedSince closed_since(const CareInput& care, std::span<const KeptTrial> trials) {
    ClosedSince closed;
    closed.agreed = sentences_of(gates_since_agreed(care));
    const CivilDate today = care.clock.date_at(care.as_of);
    for (const KeptTrial& kept : trials) {
        if (state_of(kept, today) == TrialState::running && allotted_a(kept.trial, today)) {
            closed.trials[kept.number] = sentences_of(gates_before_trial_papers(kept.trial, care));
        }
    }
    return closed;
}

}  // namespace tracewright
