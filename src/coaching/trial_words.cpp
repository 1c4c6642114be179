#include "coaching/trial_words.hpp"

#include "findings/question_sentences.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

std::string pairs_words(int pairs) {
    return fmt::format("{} {}", pairs, pairs == 1 ? "pair" : "pairs");
}

constexpr int fewest_pairs = 6;
constexpr int fewest_pairs_as_done = 3;
constexpr double kept_at_least = 0.8;
constexpr double unlike_from = 0.5;  // standardised difference in carbohydrate

class Teller {
  public:
    Teller(const Trial& trial, const ReviewInput& input, double carbohydrate_apart,
           TrialReading& reading)
        : trial_(trial),
          input_(input),
          carbohydrate_apart_(carbohydrate_apart),
          reading_(reading) {}

    void tell() {
        Finding& finding = reading_.finding;
        const PairsRead& read = reading_.as_allotted;
        const int all = static_cast<int>(trial_.blocks.size());
        finding.evidence.used = read.pairs;
        finding.evidence.left_out = all - read.pairs;
        if (read.pairs < all) {
            finding.evidence.left_out_why = missing_why();
        }
        if (read.pairs == 0) {
            finding.sentence = "The trial has ended without a pair that can be read on both days.";
            return;
        }
        estimate();
        const std::string against = what_stands_against();
        if (!against.empty()) {
            finding.answer = Answer::cannot_tell;
            finding.sentence = against + " " + numbers();
        } else {
            decide();
        }
        tell_done();
        add_caveats();
    }

  private:
    const Trial& trial_;
    const ReviewInput& input_;
    double carbohydrate_apart_;
    TrialReading& reading_;

    std::string difference(double value) const {
        return difference_words(value, trial_.outcome, input_.unit);
    }
    std::string interval(const std::array<double, 2>& ends) const {
        return interval_words(ends, trial_.outcome, input_.unit);
    }

    void estimate() {
        const PairsRead& read = reading_.as_allotted;
        const bool glucose = facts_of(trial_.outcome).unit == OutcomeUnit::glucose;
        const auto shown = [&](double value) {
            return glucose ? converted(value, GlucoseUnit::mg_per_dl, input_.unit) : value;
        };
        Estimate told;
        told.value = shown(read.estimate);
        told.unit = glucose ? name_of(input_.unit) : "h";
        told.per = "with '" + trial_.a + "' against '" + trial_.b + "'";
        if (read.interval95) {
            told.interval95 = {{shown((*read.interval95)[0]), shown((*read.interval95)[1])}};
        }
        reading_.finding.estimate = told;
    }

    std::string numbers() const {
        const PairsRead& read = reading_.as_allotted;
        std::string text =
            fmt::format("As allotted, with '{}' {} was {} than with '{}'", trial_.a,
                        facts_of(trial_.outcome).words, difference(read.estimate), trial_.b);
        if (difference(read.estimate) == "about the same") {
            text = fmt::format("As allotted, {} was about the same with '{}' and with '{}'",
                               facts_of(trial_.outcome).words, trial_.a, trial_.b);
        }
        if (read.interval95) {
            text += fmt::format(" ({})", interval(*read.interval95));
        }
        return text + fmt::format("; p {:.4f} by the lot ({} of {} orders), {}.", read.p,
                                  read.at_least, read.patterns, pairs_words(read.pairs));
    }

    // Why no verdict is given; empty if one may be.
    std::string what_stands_against() const {
        const PairsRead& read = reading_.as_allotted;
        if (read.pairs < fewest_pairs) {
            return fmt::format(
                "The trial ended with {}: even a perfect split could not go "
                "below p = {}. Keep the estimate, run {} more.",
                pairs_words(read.pairs), smallest_sign_flip_p(read.pairs),
                fewest_pairs - read.pairs);
        }
        const int known = reading_.kept + reading_.broken;
        if (known > 0 && reading_.kept < kept_at_least * known) {
            return fmt::format(
                "Only {} of {} days were done as allotted; at least 80 % are needed "
                "for an answer.",
                reading_.kept, known);
        }
        if (carbohydrate_apart_ > unlike_from) {
            return "The two arms' meals differed in carbohydrate by over half a standard "
                   "deviation: which of the two the difference goes with can't be told.";
        }
        return {};
    }

    void decide() {
        Finding& finding = reading_.finding;
        const PairsRead& read = reading_.as_allotted;
        // What the sensor alone could make is no difference shown.
        const bool beyond_sensor =
            !read.interval95 || (*read.interval95)[0] > 0 || (*read.interval95)[1] < 0;
        const bool shown = read.p <= 0.05 && beyond_sensor;
        const bool within = read.interval95 && (*read.interval95)[0] > -trial_.worth &&
                            (*read.interval95)[1] < trial_.worth;
        finding.answer = within  ? Answer::no_difference_worth_acting_on
                         : shown ? Answer::yes
                                 : Answer::cannot_tell;
        const std::string head = within  ? "The trial showed no difference worth acting on."
                                 : shown ? "The trial showed a difference."
                                         : "This trial can't tell.";
        finding.sentence = head + " " + numbers();
        if (finding.answer == Answer::yes) {
            finding.next = {NextStep::agree_change,
                            "If the client likes it, agree on it and on when to look again."};
            finding.client_sentence =
                fmt::format("In your trial, {} was {} on the days with '{}'.",
                            facts_of(trial_.outcome).words, difference(read.estimate), trial_.a);
        } else if (finding.answer == Answer::cannot_tell) {
            finding.next = {NextStep::run_trial,
                            "More pairs by a new lot, read on their own, would narrow it."};
            finding.client_sentence =
                "Your trial can't tell yet which of the two days is better for your glucose.";
        } else {
            finding.next = {NextStep::nothing, "Either way will do: keep the one that is liked."};
            finding.client_sentence = "In your trial both kinds of day came out alike.";
        }
    }

    void tell_done() {
        if (!reading_.as_done) {
            return;
        }
        const PairsRead& read = *reading_.as_done;
        reading_.finding.sentence +=
            fmt::format(" As done ({} {} not as allotted): {}", reading_.broken,
                        reading_.broken == 1 ? "day was" : "days were", pairs_words(read.pairs));
        if (read.pairs >= fewest_pairs_as_done) {
            reading_.finding.sentence += ", " + difference(read.estimate);
            if (read.t95) {
                reading_.finding.sentence += fmt::format(" ({})", interval(*read.t95));
            }
        } else if (read.pairs > 0) {
            reading_.finding.sentence += ", too few to tell a difference by";
        }
        reading_.finding.sentence += "; the lot says nothing of this one.";
    }

    std::string missing_why() const {
        std::string text;
        for (const TrialDay& day : reading_.days) {
            if (!day.value) {
                text += (text.empty() ? "" : "; ") + day_words(day.date, input_.zones.writing()) +
                        ": " + day.none_because;
            }
        }
        return text;
    }

    void add_caveats() {
        std::vector<Caveat>& caveats = reading_.finding.caveats;
        const int all = static_cast<int>(trial_.blocks.size());
        if (reading_.as_allotted.pairs < all) {
            caveats.push_back({CaveatKind::few_days,
                               fmt::format("{} of {} pairs could not be read ({}).",
                                           all - reading_.as_allotted.pairs, all, missing_why())});
        }
        if (reading_.kept + reading_.broken < 2 * all) {
            caveats.push_back({CaveatKind::diary_incomplete,
                               fmt::format("What was done is not known on {} of {} days; they are "
                                           "read as allotted.",
                                           2 * all - reading_.kept - reading_.broken, 2 * all)});
        }
    }
};

}  // namespace

void tell_trial(const Trial& trial, const ReviewInput& input, double carbohydrate_apart,
                TrialReading& reading) {
    Teller(trial, input, carbohydrate_apart, reading).tell();
}

}  // namespace tracewright
