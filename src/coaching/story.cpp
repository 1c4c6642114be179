#include "coaching/story.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/closed_since.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/escalation.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "coaching/wears_apart.hpp"
#include "findings/last_reading.hpp"
#include "findings/wording.hpp"
#include "trace/counted_trace.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

constexpr const char* does_not_go_on = " does not go on: something that comes first has closed it.";

class Teller {
  public:
    explicit Teller(const LabQuestion& question)
        : question_(question),
          clock_(question.input.zones),
          today_(clock_.date_at(question.input.as_of)),
          medicines_(client_medicines(question.facts, clock_)),
          at_once_(counted_trace(question.input.wears, question.input.prefer_wear).choices),
          care_{question.facts, question.input.wears, question.input.diary,
                medicines_,     question.input.zones, question.input.as_of},
          pregnant_(goals_that_hold(question.facts).kind == GoalKind::pregnancy),
          closed_(closed_since(care_, question.trials)) {}

    Story tell() {
        lead();
        story_.labs = lab_report(question_);
        story_.next_lab = next_lab(question_.facts, medicines_, clock_, question_.input.as_of);
        for (const AgreedChange& change : question_.facts.earlier_changes) {
            did_it_help(change);
        }
        if (question_.facts.agreed_change) {
            did_it_help(*question_.facts.agreed_change);
            if (question_.facts.agreed_change->outcome == ChangeOutcome::open &&
                !closed_.agreed.empty()) {
                story_.changes.back().closed = std::string("It") + does_not_go_on + closed_.agreed;
            }
        }
        trials();
        what_is_unknown();
        return std::move(story_);
    }

  private:
    const LabQuestion& question_;
    const ZoneHistory& clock_;
    CivilDate today_;
    MedicineTimeline medicines_;
    std::vector<CountedTrace::Choice> at_once_;
    CareInput care_;
    bool pregnant_;
    ClosedSince closed_;
    Story story_;

    void lead() {
        story_.very_low = very_low();
        std::optional<Instant> last;
        for (const Wear& wear : question_.input.wears) {
            if (!wear.empty()) {
                last = std::max(last.value_or(wear.readings.back().at), wear.readings.back().at);
            }
        }
        story_.last_reading = last_reading_sentence(last, question_.input.as_of, clock_);
        if (pregnant_) {
            story_.care.emplace_back(
                "In pregnancy, while planning one, or when unsure, the maternity or diabetes "
                "clinic leads: no goal, plan or trial is set here.");
        }
        story_.fewer_numbers = numbers_turned_down(question_.facts.cautions.eating);
        if (story_.fewer_numbers) {
            story_.care.emplace_back(
                "The eating screen is positive or not answered: hours in range, foods, amounts "
                "and weight are not for the client and are left off the page to print.");
        }
    }

    // Of all wears and finger-pricks, before any exclusion, whoever answered for it since.
    std::string very_low() const {
        const LadderInput ladder{question_.input.wears,
                                 question_.input.diary,
                                 medicines_,
                                 clock_,
                                 question_.input.unit,
                                 {},
                                 {}};
        const Escalation* latest = nullptr;
        const Escalation* first = nullptr;
        std::size_t count = 0;
        const auto all = escalations(ladder);
        for (const Escalation& one : all) {
            if (one.event.starts_with("very_low") || one.event.starts_with("needed_help")) {
                latest = latest == nullptr || one.at > latest->at ? &one : latest;
                first = first == nullptr || one.at < first->at ? &one : first;
                ++count;
            }
        }
        if (count == 0) {
            return {};
        }
        std::string sentence =
            "Very low: " + escalation_sentence(*latest, clock_, latest->at, question_.input.as_of);
        if (count > 1) {
            sentence += fmt::format(" {} very lows in all, the first {}.", count,
                                    day_and_time(clock_.wall_time(first->at), clock_.writing()));
        }
        return sentence;
    }

    // Of sensors worn at once the one that a review counts.
    std::size_t counted_for(std::size_t wear) const {
        const auto other = std::ranges::find_if(at_once_, [&](const CountedTrace::Choice& choice) {
            return std::ranges::find(choice.not_counted, wear) != choice.not_counted.end();
        });
        return other == at_once_.end() ? wear : other->counted;
    }

    std::optional<std::size_t> wear_before(CivilDate agreed) const {
        std::optional<std::size_t> found;
        const auto& wears = question_.input.wears;
        for (std::size_t i = 0; i < wears.size(); ++i) {
            if (wears[i].empty()) {
                continue;
            }
            const Interval span = wears[i].sensed_span();
            if (clock_.date_at(span.from + span.length() / 2) < agreed &&
                (!found || wears[*found].start < wears[i].start)) {
                found = i;
            }
        }
        return found ? std::optional{counted_for(*found)} : found;
    }

    bool stands_after(std::size_t wear, const AgreedChange& change,
                      std::optional<std::size_t> before) const {
        const auto& wears = question_.input.wears;
        if (wears[wear].empty()) {
            return false;
        }
        const CivilDate from = clock_.date_at(wears[wear].sensed_span().from);
        return from >= *change.agreed_on && (!change.ended_on || from <= *change.ended_on) &&
               (!before || is_before(wears[*before], wears[wear]));
    }

    // The first begun since; what was worn together with the one before it can't stand for after.
    std::optional<std::size_t> wear_after(const AgreedChange& change,
                                          std::optional<std::size_t> before) const {
        std::optional<std::size_t> found;
        const auto& wears = question_.input.wears;
        for (std::size_t i = 0; i < wears.size(); ++i) {
            if (stands_after(i, change, before) &&
                (!found || wears[i].start < wears[*found].start)) {
                found = i;
            }
        }
        const bool counted = found && stands_after(counted_for(*found), change, before);
        return counted ? counted_for(*found) : found;
    }

    void did_it_help(const AgreedChange& change) {
        DidItHelp told;
        told.change = change;
        told.kept_off_paper = is_kept_off_paper(change, care_);
        if (change.outcome == ChangeOutcome::kept) {
            story_.kept.push_back(change.words);
        }
        if (!change.agreed_on) {
            told.none_because = "The day it was agreed is not known.";
        } else {
            const auto before = wear_before(*change.agreed_on);
            const auto after = wear_after(change, before);
            if (!before) {
                told.none_because = "No wear lies before it.";
            } else if (!after) {
                told.none_because = "No wear has begun since, while it was in force.";
            } else {
                told.compared = before_after(question_.input, {*before}, {*after}, medicines_);
                what_else(told, *before, *after);
            }
        }
        story_.changes.push_back(std::move(told));
    }

    void what_else(DidItHelp& told, std::size_t before, std::size_t after) const {
        const auto& wears = question_.input.wears;
        const Instant begin = wears[before].sensed_span().from;
        const Instant end = wears[after].sensed_span().to;
        const CivilDate from = clock_.date_at(begin);
        const CivilDate to = clock_.date_at(end);
        const auto between = [&](CivilDate day) { return day >= from && day <= to; };
        const auto other = [&](const AgreedChange& change) {
            const bool itself =
                change.words == told.change.words && change.agreed_on == told.change.agreed_on;
            if (!itself && change.agreed_on && between(*change.agreed_on)) {
                told.else_changed.push_back(
                    fmt::format("\"{}\" was agreed on {} too", change.words,
                                full_date(*change.agreed_on, clock_.writing())));
            }
        };
        std::ranges::for_each(question_.facts.earlier_changes, other);
        if (question_.facts.agreed_change) {
            other(*question_.facts.agreed_change);
        }
        for (const KeptTrial& kept : question_.trials) {
            if (between(kept.trial.first_day()) || between(kept.trial.last_day())) {
                told.else_changed.push_back("a trial ran: " + kept.trial.question);
            }
        }
        const auto ill = std::ranges::count_if(question_.input.diary, [&](const DiaryEntry& entry) {
            return entry.kind == DiaryKind::illness && entry.at >= begin && entry.at < end;
        });
        if (ill > 0) {
            told.else_changed.push_back(
                fmt::format("illness is noted {} {}", ill, ill == 1 ? "time" : "times"));
        }
    }

    // Of a trial that would go on; empty if nothing has closed it.
    std::string closed_by(const KeptTrial& kept) const {
        std::string because;
        for (const Gate& gate : gates_before_trial_papers(kept.trial, care_)) {
            because += " " + gate.for_coach.record;
        }
        return because;
    }

    void trials() {
        for (const KeptTrial& kept : question_.trials) {
            const TrialState state = state_of(kept, today_);
            if (goes_on(kept, today_)) {
                if (const std::string because = closed_by(kept); !because.empty()) {
                    story_.unknown.push_back(kept.trial.question + " The trial on it" +
                                             does_not_go_on + because);
                    continue;
                }
                story_.unknown.push_back(fmt::format(
                    "{} A trial on it is {} and is read after {}.", kept.trial.question,
                    name_of(state), full_date(kept.trial.last_day(), clock_.writing())));
                continue;
            }
            TrialReading reading = read_kept(kept, question_.input);
            if (pregnant_) {
                reading.finding.next = {};
            }
            if (reading.finding.answer == Answer::cannot_tell) {
                story_.unknown.push_back(kept.trial.question + " The trial could not tell.");
            }
            story_.trials.push_back(reading.finding);
        }
    }

    void what_is_unknown() {
        for (const DidItHelp& one : story_.changes) {
            if (!one.compared) {
                story_.unknown.push_back(
                    fmt::format("Whether there was a difference with \"{}\": {}", one.change.words,
                                one.none_because));
            } else if (one.compared->finding.answer == Answer::cannot_tell) {
                story_.unknown.push_back(
                    fmt::format("Whether there was a difference with \"{}\": the wears can't tell.",
                                one.change.words));
            }
        }
        if (!medicines_.risks_at(question_.input.as_of).answered) {
            story_.unknown.emplace_back("Which medicines are taken, and since when: please ask.");
        }
        if (const std::string names = medicines_without_a_day(); !names.empty()) {
            story_.unknown.push_back(
                "Since when this is taken, begun before the coaching: " + names + ".");
        }
        if (!story_.next_lab.ever) {
            story_.unknown.emplace_back("What a laboratory says: no A1c is on record.");
        }
        if (weights_known() == 0) {
            story_.unknown.emplace_back("Whether weight changed: none is on record.");
        }
    }

    // Taken today, but on no day of the line.
    std::string medicines_without_a_day() const {
        std::string names;
        for (const MedicineLine& line : question_.facts.medicines) {
            const MedicineText text = medicine_text(line.written);
            const bool taken = !text.says_none && text.doing != MedicineDoing::stopped;
            if (taken && !line.from && (!line.until || *line.until >= today_)) {
                names += (names.empty() ? "" : "; ") + line.written;
            }
        }
        return names;
    }

    std::size_t weights_known() const {
        return static_cast<std::size_t>(
            std::ranges::count(story_.labs.line, std::string("weight"), &LineRow::kind));
    }
};

}  // namespace

Story story_of(const LabQuestion& question) {
    return Teller(question).tell();
}

}  // namespace tracewright
