#include "coaching/next_lab.hpp"

#include "coaching/a1c_results.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::days three_months{90};
constexpr std::chrono::days looked_back{3653};

}  // namespace

NextLab next_lab(const ClientFacts& facts, const MedicineTimeline& medicines,
                 const ZoneHistory& clock, Instant as_of) {
    const CivilDate today = clock.date_at(as_of);
    NextLab next{today, "", false, goals_that_hold(facts).kind == GoalKind::pregnancy};
    const auto wait_for = [&](CivilDate day, const std::string& what) {
        if (day <= today && day + three_months > next.on) {
            next.on = day + three_months;
            next.because = "90 days after " + what;
        }
    };
    for (const A1cResult& result : a1c_results(facts.labs)) {
        next.ever = next.ever || result.on <= today;
        wait_for(result.on, "the last A1c");
    }
    for (const MedicineEvent& event : medicines.events_between(as_of - looked_back, as_of)) {
        // A stop is told at the end of its last day.
        const bool stop = event.kind == MedicineEvent::Kind::stop;
        wait_for(clock.date_at(event.at - std::chrono::seconds{stop ? 1 : 0}),
                 event.names + (event.kind == MedicineEvent::Kind::start ? " was started"
                                : stop                                   ? " was stopped"
                                                                         : " was changed"));
    }
    const auto changed = [&](const AgreedChange& change) {
        if (change.agreed_on) {
            wait_for(*change.agreed_on, "\"" + change.words + "\" was agreed");
        }
    };
    std::ranges::for_each(facts.earlier_changes, changed);
    if (facts.agreed_change) {
        changed(*facts.agreed_change);
    }
    return next;
}

}  // namespace tracewright
