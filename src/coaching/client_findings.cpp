#include "coaching/client_findings.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/pressure_dip_label.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

std::optional<Finding> why_they_came_finding(const ClientFacts& facts) {
    if (facts.why_they_came.empty()) {
        return std::nullopt;
    }
    Finding finding;
    finding.code = "why_they_came";
    finding.question = "Why did they come?";
    finding.answer = Answer::yes;
    finding.sentence = "In their words: \"" + facts.why_they_came + "\"";
    return finding;
}

namespace {

std::string taken_in(const MedicineTimeline& medicines, Interval window, const ZoneHistory& clock) {
    std::string taken;
    for (const MedicineUse& use : medicines.uses()) {
        const bool begun = !use.from || *use.from < window.to;
        const bool over = use.until && *use.until <= window.from;
        if (!begun || over || use.text.says_none) {
            continue;
        }
        taken += (taken.empty() ? "" : "; ") + use.text.written;
        if (use.from) {
            taken += " since " + full_date(clock.date_at(*use.from), clock.writing());
        }
        if (use.until && *use.until <= window.to) {
            taken += " until " + full_date(clock.date_at(*use.until - std::chrono::seconds{1}),
                                           clock.writing());
        }
    }
    return taken;
}

const char* verb_of(MedicineEvent::Kind kind) {
    switch (kind) {
        case MedicineEvent::Kind::start:
            return "started";
        case MedicineEvent::Kind::stop:
            return "stopped";
        case MedicineEvent::Kind::change:
            return "changed";
    }
    return "changed";
}

// A stop and a start of the same medicine within two days is a change of it.
std::vector<MedicineEvent> changes_in(const MedicineTimeline& medicines, Interval window) {
    constexpr std::chrono::hours two_days{48};
    std::vector<MedicineEvent> events;
    for (const MedicineEvent& event : medicines.events_between(window.from, window.to)) {
        const auto same = std::ranges::find_if(events, [&](const MedicineEvent& other) {
            return other.names == event.names && event.at - other.at <= two_days;
        });
        if (same != events.end()) {
            same->kind = MedicineEvent::Kind::change;
        } else {
            events.push_back(event);
        }
    }
    return events;
}

}  // namespace

Finding medicines_finding(const MedicineTimeline& medicines, Interval window,
                          const ZoneHistory& clock) {
    Finding finding;
    finding.code = "medicines";
    finding.question = "Which medicines were taken?";
    const MedicineRisks risks = medicines.risks_in(window);
    finding.answer = risks.answered ? Answer::yes : Answer::cannot_tell;
    const std::string taken = taken_in(medicines, window, clock);
    finding.sentence = !taken.empty()   ? "On the list for these days: " + taken + "."
                       : risks.answered ? "No medicine is taken, by the client's answer."
                                        : "No medicine is on the list for these days.";
    for (const MedicineEvent& event : changes_in(medicines, window)) {
        finding.sentence += fmt::format(
            " {} {} on {}: what changed after it can't be credited to "
            "a habit.",
            event.names, verb_of(event.kind), day_words(clock.date_at(event.at), clock.writing()));
    }
    for (const std::string& question : risks.to_ask) {
        finding.caveats.push_back({CaveatKind::medicines_not_known,
                                   question + " Until then the list counts as able to cause lows "
                                              "and as holding an SGLT2 inhibitor."});
    }
    if (!risks.answered) {
        finding.next = {NextStep::ask_client, "Ask which medicines are taken, and since when."};
    }
    return finding;
}

Finding diary_finding(const DiaryCompleteness& completeness, WayOfWriting way) {
    constexpr double mostly = 0.8;
    Finding finding;
    finding.code = "diary";
    finding.question = "How complete is the diary?";
    finding.answer = completeness.meals_share() >= mostly ? Answer::yes : Answer::cannot_tell;
    finding.sentence = completeness_sentence(completeness, way);
    finding.evidence.used = completeness.days;
    finding.evidence.used_what = "days";
    if (finding.answer == Answer::cannot_tell) {
        finding.caveats.push_back(
            {CaveatKind::hours_unseen,
             "What is not written may be unlike what is: bad days are left blank more often "
             "(common practice, no source)."});
        finding.next = {NextStep::ask_client,
                        "Ask what made writing hard, and agree on the one meal that matters most."};
    }
    return finding;
}

Finding agreed_change_finding(const CareInput& care) {
    Finding finding;
    finding.code = "agreed_change";
    finding.question = "What was agreed last?";
    if (!care.facts.agreed_change) {
        finding.sentence = "No change is agreed.";
        return finding;
    }
    const AgreedChange& change = *care.facts.agreed_change;
    const WayOfWriting way = care.clock.writing();
    finding.answer = Answer::yes;
    finding.sentence = "\"" + change.words + "\"";
    if (change.agreed_on) {
        finding.sentence += ", agreed on " + day_words(*change.agreed_on, way);
    }
    if (!gates_since_agreed(care).empty()) {
        finding.sentence += ". It does not go on: something that comes first has closed it.";
        finding.next = {NextStep::ask_client, "Tell the client, and say how it ended."};
        return finding;
    }
    if (change.check_on) {
        const bool due = *change.check_on <= care.clock.date_at(care.as_of);
        finding.sentence += fmt::format(", to be checked on {}{}", day_words(*change.check_on, way),
                                        due ? ": the check is due" : "");
    }
    finding.sentence += ".";
    finding.caveats.push_back({CaveatKind::few_days,
                               "Whether it helped can't be told from one window: that takes a "
                               "comparison with the days before, or a trial."});
    return finding;
}

std::optional<Finding> dips_finding(const LadderInput& input, const ClientFacts& facts) {
    const DipLabels labels = dip_labels(input, facts);
    if (labels.may_be_pressure.empty() && labels.not_labelled.empty()) {
        return std::nullopt;
    }
    Finding finding;
    finding.code = "pressure";
    finding.question = "Could a night dip be pressure on the sensor?";
    finding.answer = Answer::cannot_tell;
    for (const Mark& mark : labels.may_be_pressure) {
        finding.sentence += (finding.sentence.empty() ? "" : " ") + mark.seen;
    }
    for (const std::string& sentence : labels.not_labelled) {
        finding.sentence += (finding.sentence.empty() ? "" : " ") + sentence;
    }
    finding.caveats.push_back({CaveatKind::sensor_suspect,
                               "Lows in such stretches are counted and escalated like any other."});
    finding.next = {NextStep::finger_prick, "A finger-prick when it comes again tells more."};
    return finding;
}

}  // namespace tracewright
