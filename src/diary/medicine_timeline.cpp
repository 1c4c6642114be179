#include "diary/medicine_timeline.hpp"

#include <algorithm>

namespace tracewright {

namespace {

std::string names_of(const MedicineText& text) {
    std::string names;
    for (const Medicine* medicine : text.recognised) {
        names += (names.empty() ? "" : ", ") + medicine->name;
    }
    return names.empty() ? text.written : names;
}

void add(MedicineRisks& risks, const Medicine& part) {
    risks.can_cause_lows |=
        part.causes_lows == CausesLows::yes || part.causes_lows == CausesLows::unknown;
    risks.sglt2 |= part.sglt2;
    risks.insulin |= part.is_insulin();
    risks.secretagogue |= part.is_secretagogue();
    risks.beta_blocker |= part.is_beta_blocker();
    risks.misleads_sensor |= part.misleads_sensor != MisleadsSensor::no;
    risks.unusable_for_lows |= part.misleads_sensor == MisleadsSensor::yes;
}

}  // namespace

bool MedicineUse::may_be_taken_in(Interval window) const {
    const bool begun = told_at_start || !from || *from < window.to;
    return begun && (!until || *until > window.from);
}

bool answered_none_that_can_cause_lows(const MedicineRisks& risks) {
    return risks.answered && !risks.can_cause_lows;
}

MedicineRisks risks_of(const std::vector<MedicineText>& taken) {
    MedicineRisks risks;
    if (taken.empty()) {
        risks.to_ask.emplace_back("Medicines have not been asked about yet: please ask.");
        return risks;
    }
    risks.answered = true;
    risks.can_cause_lows = risks.sglt2 = risks.insulin = risks.secretagogue = false;
    for (const MedicineText& text : taken) {
        for (const Medicine* medicine : text.recognised) {
            add(risks, *medicine);  // what is told of a combination, then of its parts
            for (const Medicine* part : parts_of(*medicine)) {
                add(risks, *part);
            }
        }
        if (text.unrecognised) {
            risks.answered = false;
            risks.can_cause_lows = risks.sglt2 = risks.insulin = risks.secretagogue = true;
            risks.to_ask.emplace_back("Medicine not recognised: please ask. As written: '" +
                                      text.written + "'.");
        }
    }
    return risks;
}

MedicineTimeline::MedicineTimeline(std::vector<MedicineUse> uses, std::optional<Instant> asked)
    : uses_(std::move(uses)), asked_(asked) {
    // An end before its beginning is a slip of one of the two: taken before, and still.
    for (MedicineUse& use : uses_) {
        if (use.from && use.until && *use.until <= *use.from) {
            use.until.reset();
            use.told_at_start = true;
        }
    }
}

MedicineRisks MedicineTimeline::risks_in(Interval window) const {
    std::vector<MedicineText> taken;
    bool ended = false;
    for (const MedicineUse& use : uses_) {
        ended |= use.until && *use.until <= window.from;
        if (use.may_be_taken_in(window)) {
            taken.push_back(use.text);
        }
    }
    const bool asked = asked_ && *asked_ <= window.to;
    if (taken.empty() && asked && (ended || !uses_.empty())) {
        MedicineText none;  // all that was told has ended or not begun: an answer
        none.says_none = true;
        taken.push_back(none);
    }
    MedicineRisks risks = risks_of(taken);
    if (!asked && risks.answered) {
        risks.answered = false;
        risks.can_cause_lows = risks.sglt2 = risks.insulin = risks.secretagogue = true;
        risks.to_ask.emplace_back("Medicines had not been asked about at that time: please ask.");
    }
    return risks;
}

// A line that ends on the day on which one of the same names begins: the dose or form was changed.
const MedicineUse* MedicineTimeline::gone_on_with(const MedicineUse& ended) const {
    const auto next = std::ranges::find_if(uses_, [&](const MedicineUse& use) {
        return &use != &ended && use.from && ended.until && *use.from <= *ended.until &&
               *ended.until - *use.from <= std::chrono::hours{25} &&
               (!ended.from || *ended.from < *use.from) && !use.text.recognised.empty() &&
               names_of(use.text) == names_of(ended.text);
    });
    return next == uses_.end() ? nullptr : &*next;
}

std::vector<MedicineEvent> MedicineTimeline::events_between(Instant from, Instant to) const {
    std::vector<MedicineEvent> events;
    const Interval window{from, to};
    for (const MedicineUse& use : uses_) {
        if (use.text.says_none) {
            continue;
        }
        const bool goes_on = std::ranges::any_of(
            uses_, [&](const MedicineUse& ended) { return gone_on_with(ended) == &use; });
        if (use.from && window.contains(*use.from)) {
            events.push_back({*use.from,
                              goes_on || use.text.doing == MedicineDoing::changed
                                  ? MedicineEvent::Kind::change
                                  : MedicineEvent::Kind::start,
                              names_of(use.text)});
        }
        if (use.until && window.contains(*use.until)) {
            const MedicineUse* next = gone_on_with(use);
            if (next == nullptr) {
                events.push_back({*use.until, MedicineEvent::Kind::stop, names_of(use.text)});
            } else if (!window.contains(*next->from)) {  // the day of the change lies half outside
                events.push_back({*use.until, MedicineEvent::Kind::change, names_of(use.text)});
            }
        }
    }
    std::stable_sort(events.begin(), events.end(),
                     [](const MedicineEvent& a, const MedicineEvent& b) { return a.at < b.at; });
    return events;
}

bool on_blood_pressure_tablets(const MedicineTimeline& medicines, Interval window) {
    if (!medicines.risks_in(window).answered) {
        return true;
    }
    return std::ranges::any_of(medicines.uses(), [&](const MedicineUse& use) {
        return use.may_be_taken_in(window) &&
               std::ranges::any_of(use.text.recognised, &Medicine::lowers_blood_pressure);
    });
}

}  // namespace tracewright
