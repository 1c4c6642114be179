#include "coaching/before_after_words.hpp"

#include "findings/edge_words.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

namespace {

constexpr double sure_of_direction = 0.975;
constexpr double sure_beyond = 0.9;
constexpr double outside_at_most = 0.05;  // to either side: two one-sided tests, Schuirmann 1987

std::string time_words(double hours) {
    return hours_and_minutes(std::chrono::seconds{std::lround(std::abs(hours) * 60) * 60});
}

bool rounds_to_nothing(double hours) {
    return std::lround(std::abs(hours) * 60) == 0;
}

std::string difference_words(double hours) {
    return rounds_to_nothing(hours) ? "about the same"
                                    : time_words(hours) + (hours > 0 ? " more" : " less");
}

std::string end_words(double hours) {
    return rounds_to_nothing(hours) ? "the same" : difference_words(hours);
}

std::string interval_words(const std::array<double, 2>& ends) {
    return fmt::format("95 % interval from {} to {}", end_words(ends[0]), end_words(ends[1]));
}

class Teller {
  public:
    Teller(BeforeAfter& result, const BeforeAfterTold& told) : result_(result), told_(told) {}

    void tell() {
        Finding& finding = result_.finding;
        finding.code = "before_after";
        finding.question =
            fmt::format("Are there more hours in range ({} to {}) than before?",
                        edge_words(70, told_.input.unit), edge_words(180, told_.input.unit));
        finding.evidence = {
            result_.days_before + result_.days_after,
            "days",
            result_.left_out,
            result_.left_out > 0 ? "less than 70 % of the day seen, or illness noted" : "",
            fmt::format(
                "daily hours, AR(1) grid begun anew at each wear, sensors' own error {:.0f} "
                "% each added; worth acting on {}",
                100 * sensor_share(), time_words(told_.settings.worth_hours)),
            told_.input.seed,
            result_.weekdays_matched ? std::vector<std::string>{"weekends"}
                                     : std::vector<std::string>{}};
        if (told_.input.goals.kind == GoalKind::pregnancy) {
            finding.sentence =
                "In pregnancy, while planning one, or when unsure, no comparison is made here: "
                "your "
                "maternity or diabetes clinic leads.";
            finding.next = {NextStep::contact_prescriber, "Ring the maternity or diabetes clinic."};
            return;
        }
        if (result_.worn_at_once) {
            finding.sentence = fmt::format(
                "{} and {} are no before and after: the one does not end before the other begins.",
                names_of(told_.before), names_of(told_.after));
            finding.next = {NextStep::nothing, "Choose wears that lie one after the other."};
            return;
        }
        if (!told_.readable) {
            finding.sentence = fmt::format(
                "{} days before and {} days after can be read; at least 5 of each are needed.",
                result_.days_before, result_.days_after);
            finding.next = {NextStep::collect_more, "More days of readings on the shorter side."};
            return;
        }
        finding.estimate = Estimate{result_.difference, "h", result_.interval95, "a day"};
        if (result_.same_readings) {
            finding.answer = Answer::no_difference_worth_acting_on;
            finding.estimate->interval95 = std::nullopt;
            finding.sentence =
                "The two stretches hold the very same readings: the difference is 0 h, no "
                "difference worth acting on.";
            finding.next = {NextStep::nothing, "Check whether one record was brought in twice."};
            return;
        }
        decide();
        caveats();
    }

  private:
    BeforeAfter& result_;
    const BeforeAfterTold& told_;

    // "wear 2 (17 to 31 March 2026)"
    std::string names_of(const std::vector<std::size_t>& wears) const {
        std::string names;
        for (const std::size_t index : wears) {
            const Wear& wear = told_.input.wears.at(index);
            names += names.empty() ? "" : ", ";
            names += wear.label;
            if (!wear.empty()) {
                names += fmt::format(" ({})",
                                     date_range(told_.input.zones.date_at(wear.readings.front().at),
                                                told_.input.zones.date_at(wear.readings.back().at),
                                                told_.input.zones.writing()));
            }
        }
        return names;
    }

    double sensor_share() const {
        return told_.other_kind ? told_.settings.sensor_sd_other_kind : told_.settings.sensor_sd;
    }

    // After is told as before and the difference, to the minute: the three add up.
    std::string numbers() const {
        const auto whole = [](double hours) {
            return static_cast<double>(std::lround(hours * 60));
        };
        const double after = (whole(*result_.hours_before) + whole(result_.difference)) / 60;
        return fmt::format(
            "In range {} a day before ({} days) and {} after ({} days): {}{} ({}{}).",
            time_words(*result_.hours_before), result_.days_before, time_words(after),
            result_.days_after, difference_words(result_.difference),
            rounds_to_nothing(result_.difference) ? "" : " a day",
            interval_words(result_.interval95),
            result_.weekdays_matched ? ", weekends accounted for" : "");
    }

    void decide() {
        Finding& finding = result_.finding;
        const double more = result_.probability_more;
        const bool directed = std::max(more, 1 - more) >= sure_of_direction;
        const bool within = result_.beyond <= outside_at_most;
        const char* direction = more > 0.5 ? "more" : "fewer";
        if (directed && !within) {
            finding.answer = Answer::yes;
            finding.sentence =
                result_.beyond >= sure_beyond
                    ? fmt::format("There are {} hours in range than before, by over {}. ",
                                  direction, time_words(told_.settings.worth_hours))
                    : fmt::format(
                          "There are {} hours in range than before; by how much is not "
                          "clear. ",
                          direction);
            finding.next = {NextStep::ask_client,
                            "Ask what the client did otherwise, and list it."};
            finding.client_sentence = more > 0.5 ? "More of your day was in range than before."
                                                 : "Less of your day was in range than before.";
        } else if (within) {
            finding.answer = Answer::no_difference_worth_acting_on;
            finding.sentence =
                fmt::format("There is no difference worth acting on (under {} a day). ",
                            time_words(told_.settings.worth_hours));
            finding.next = {NextStep::nothing,
                            "Keep what is liked; look again after the next wear."};
            finding.client_sentence = "Before and after look alike.";
        } else {
            finding.answer = Answer::cannot_tell;
            finding.sentence = "These wears can't tell. ";
            finding.next = what_would_tell();
            finding.client_sentence = "We can't tell yet whether there is a difference.";
        }
        finding.sentence += numbers();
    }

    Next what_would_tell() const {
        if (result_.days_needed) {
            return {NextStep::collect_more,
                    fmt::format("{} days on each side would narrow it to {} to either side.",
                                *result_.days_needed, time_words(told_.settings.worth_hours))};
        }
        return {NextStep::run_trial,
                "More days of the same sensors would not tell: their own error alone is as wide. "
                "Another sensor on each side, finger-prick pairs, or a trial would."};
    }

    void caveats() {
        std::vector<Caveat>& list = result_.finding.caveats;
        list.push_back(
            {told_.other_kind ? CaveatKind::other_kind_of_sensor : CaveatKind::several_wears,
             fmt::format("{}: their own error alone makes up to {} of difference (95 %).",
                         told_.other_kind ? "The sensors are of different kinds"
                                          : "Two sensors read before and after",
                         time_words(1.96 * result_.sensor_sd))});
        all_the_time_seen(list);
        medicines(list);
        chosen(list);
    }

    // A review and the story count each hour seen: without a word, one wear would have two numbers.
    void all_the_time_seen(std::vector<Caveat>& list) {
        const std::string before = time_words(*result_.hours_before_of_all);
        const std::string after = time_words(*result_.hours_after_of_all);
        if (before == time_words(*result_.hours_before) &&
            after == time_words(*result_.hours_after)) {
            return;
        }
        list.push_back({CaveatKind::hours_unseen,
                        fmt::format("Only days with at least 70 % of their readings and without "
                                    "noted illness are compared, neighbouring days and weekends "
                                    "weighed. Of all the time seen, as a review and the story "
                                    "count it, {} a day were in range before and {} after.",
                                    before, after)});
    }

    Instant begin() const {
        Instant from = told_.input.wears.at(told_.before.front()).sensed_span().from;
        for (const std::size_t wear : told_.before) {
            from = std::min(from, told_.input.wears.at(wear).sensed_span().from);
        }
        return from;
    }
    Instant end() const {
        Instant to = told_.input.wears.at(told_.after.front()).sensed_span().to;
        for (const std::size_t wear : told_.after) {
            to = std::max(to, told_.input.wears.at(wear).sensed_span().to);
        }
        return to;
    }

    // A stop is told for its last day; one that goes over into a start of the same is a change.
    std::string changes_of_medicines() const {
        const auto events = told_.medicines.events_between(begin(), end());
        std::string changes;
        const auto add = [&](const MedicineEvent& event, const char* what,
                             std::chrono::seconds back) {
            changes += (changes.empty() ? "" : "; ") +
                       fmt::format("{} {} ({})", event.names, what,
                                   full_date(told_.input.zones.date_at(event.at - back),
                                             told_.input.zones.writing()));
        };
        std::vector<bool> joined(events.size(), false);
        for (std::size_t i = 0; i < events.size(); ++i) {
            const MedicineEvent& event = events[i];
            if (joined[i]) {
                continue;
            }
            if (event.kind == MedicineEvent::Kind::start) {
                add(event, "started", std::chrono::seconds{0});
                continue;
            }
            std::size_t next = i + 1;
            while (next < events.size() && !(events[next].names == event.names &&
                                             events[next].kind == MedicineEvent::Kind::start &&
                                             events[next].at - event.at <= std::chrono::days{1})) {
                ++next;
            }
            if (event.kind == MedicineEvent::Kind::stop && next < events.size()) {
                joined[next] = true;
                add(events[next], "changed", std::chrono::seconds{0});
            } else {
                const bool stop = event.kind == MedicineEvent::Kind::stop;
                add(event, stop ? "stopped" : "changed", std::chrono::seconds{stop ? 1 : 0});
            }
        }
        return changes;
    }

    void medicines(std::vector<Caveat>& list) {
        std::string changes = changes_of_medicines();
        for (const DiaryEntry& entry : told_.input.diary) {
            if (entry.kind == DiaryKind::medicine && entry.at >= begin() && entry.at < end() &&
                medicine_text(entry.text).doing == MedicineDoing::changed) {
                changes += (changes.empty() ? "" : "; ") +
                           fmt::format("'{}' ({})", entry.text,
                                       full_date(told_.input.zones.date_at(entry.at),
                                                 told_.input.zones.writing()));
            }
        }
        if (!changes.empty()) {
            list.push_back({CaveatKind::medicine_changed, "Medicines changed between: " + changes +
                                                              ". Habits can't take the credit."});
        } else if (!told_.medicines.risks_in({begin(), end()}).answered) {
            list.push_back({CaveatKind::medicines_not_known,
                            "Whether medicines changed between is not known: please ask. Until "
                            "then habits can't take the credit."});
        }
    }

    // Earlier wears that are not compared show what was usual.
    void chosen(std::vector<Caveat>& list) {
        const auto& wears = told_.input.wears;
        const bool earlier = std::ranges::any_of(wears, [&](const Wear& wear) {
            return !wear.empty() && wear.sensed_span().to <= begin();
        });
        if (told_.before.size() < 2) {
            list.push_back(
                {CaveatKind::chosen_because_bad,
                 earlier ? "One wear stands for before though there are earlier ones: taking them "
                           "in shows what was usual. If it was chosen for being bad, some of it "
                           "gets better by itself."
                         : "One wear stands for before. If it was chosen for being bad, some of it "
                           "gets better by itself."});
        }
    }
};

}  // namespace

void tell_before_after(BeforeAfter& result, const BeforeAfterTold& told) {
    Teller(result, told).tell();
}

}  // namespace tracewright
