#include "coaching/trial_reading.hpp"

#include "coaching/trial_words.hpp"
#include "findings/question_rows.hpp"
#include "findings/wording.hpp"
#include "inference/student_t.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace tracewright {

namespace {

struct PairDifferences {
    std::vector<double> differences;
    std::vector<bool> a_first;
};

double mean_of(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) {
        sum += value;
    }
    return sum / static_cast<double>(values.size());
}

double squares_of(const std::vector<double>& values) {
    const double mean = mean_of(values);
    double sum = 0;
    for (const double value : values) {
        sum += (value - mean) * (value - mean);
    }
    return sum;
}

std::optional<std::array<double, 2>> t_interval(const std::vector<double>& d) {
    if (d.size() < 3) {  // two leave one degree of freedom: an interval of anything
        return std::nullopt;
    }
    const auto n = static_cast<double>(d.size());
    const double error = std::sqrt(squares_of(d) / (n - 1) / n);
    const double t = student_t_quantile(0.975, n - 1);
    return std::array{mean_of(d) - t * error, mean_of(d) + t * error};
}

// Pairs that come out alike tell of their days alone: how far what measured them can be off stays,
// to each side of the estimate.
void keep_sensor_error(std::optional<std::array<double, 2>>& interval, const PairsRead& read,
                       Outcome outcome) {
    if (!interval || read.pairs < 2) {
        return;
    }
    const ValueError error = value_error_of(facts_of(outcome).unit);
    const double of_pairs = std::sqrt(2.0 / read.pairs) * error.least_sd;
    const double half = student_t_quantile(0.975, read.pairs - 1.0) *
                        std::hypot(of_pairs, error.share * read.estimate);
    (*interval)[0] = std::min((*interval)[0], read.estimate - half);
    (*interval)[1] = std::max((*interval)[1], read.estimate + half);
}

// From the mean of b a value can fall no further than to 0, and a day's hours rise no further than
// to all 24. A dawn rise is a difference itself and may be below 0.
void keep_possible(std::optional<std::array<double, 2>>& interval, double mean_of_b,
                   Outcome outcome) {
    if (!interval || outcome == Outcome::dawn_rise) {
        return;
    }
    const bool hours = facts_of(outcome).unit == OutcomeUnit::hours;
    for (double& end : *interval) {
        end = std::max(end, -mean_of_b);
        end = hours ? std::min(end, 24 - mean_of_b) : end;
    }
}

class Reader {
  public:
    Reader(const Trial& trial, const ReviewInput& input, const DoneOn& told)
        : trial_(trial),
          input_(input),
          told_(told),
          made_from_(trial_template_called(trial.code)) {}

    TrialReading read() {
        begin_finding();
        const Instant end = input_.zones.day_of(trial_.last_day() + reaches_to()).to;
        reading_.ended = input_.as_of >= end;
        if (!reading_.ended) {
            const CivilDate last = trial_.last_day();
            reading_.finding.sentence =
                fmt::format("The trial runs until {}; nothing is read before it has ended.",
                            full_date(last, input_.zones.writing()));
            reading_.finding.next = {NextStep::collect_more,
                                     "Keep to the schedule and write down what was done."};
            return std::move(reading_);
        }
        gather();
        as_allotted();
        as_done();
        tell_trial(trial_, input_, carbohydrate_apart(), reading_);
        return std::move(reading_);
    }

  private:
    const Trial& trial_;
    const ReviewInput& input_;
    const DoneOn& told_;
    const TrialTemplate* made_from_;
    TrialReading reading_;

    // An evening's habit shows on the morning after.
    std::chrono::days reaches_to() const {
        return std::chrono::days{facts_of(trial_.outcome).of == OutcomeOf::night ? 1 : 0};
    }

    void begin_finding() {
        Finding& finding = reading_.finding;
        finding.code = "trial." + trial_.code;
        finding.question = trial_.question;
        finding.evidence.used_what = "pairs";
        finding.evidence.seed = trial_.seed;
        finding.evidence.method =
            trial_.draw == Draw::fair_coins
                ? "randomised pairs, a fair coin in each; exact test over all orders possible, "
                  "interval by inversion"
                : "randomised pairs, as many either way; exact test over all orders possible, "
                  "interval by inversion";
    }

    ArmDone done_on(CivilDate date, const QuestionRow* row) const {
        if (const auto told = told_.find(date); told != told_.end()) {
            return told->second;
        }
        if (made_from_ == nullptr || !made_from_->seen_by || row == nullptr) {
            return ArmDone::not_known;
        }
        const auto seen = row->causes.find(*made_from_->seen_by);
        return seen == row->causes.end() ? ArmDone::not_known
               : seen->second > 0.5      ? ArmDone::a
                                         : ArmDone::b;
    }

    TrialDay day_of(CivilDate date, bool a, const std::map<CivilDate, const QuestionRow*>& rows) {
        TrialDay day{date, a, ArmDone::not_known, {}, "no reading on that day", {}};
        const auto row = rows.find(date + reaches_to());
        const QuestionRow* found = row == rows.end() ? nullptr : row->second;
        if (found != nullptr) {
            day.value = found->outcome;
            day.none_because = found->outcome ? "" : found->none_because;
            if (found->ill) {
                day.value.reset();
                day.none_because = "illness noted";
            }
            const auto grams = found->causes.find(Cause::meal_carbohydrate);
            if (grams != found->causes.end()) {
                day.carbohydrate_g = grams->second;
            }
        }
        day.done = done_on(date, found);
        const bool as_allotted = day.done == (a ? ArmDone::a : ArmDone::b);
        reading_.kept += as_allotted ? 1 : 0;
        reading_.broken += !as_allotted && day.done != ArmDone::not_known ? 1 : 0;
        return day;
    }

    void gather() {
        std::vector<Cause> causes;
        for (const Cause cause : {Cause::walk_after, Cause::meal_carbohydrate}) {
            if (can_be_asked(trial_.outcome, cause)) {
                causes.push_back(cause);
            }
        }
        const CountedTrace trace = counted_trace(input_.wears, input_.prefer_wear);
        const auto rows = question_rows(input_, trace, trial_.outcome, causes);
        std::map<CivilDate, const QuestionRow*> by_date;
        for (const QuestionRow& row : rows) {
            by_date[row.date] = &row;
        }
        for (const TrialBlock& block : trial_.blocks) {
            reading_.days.push_back(day_of(block.day_of_a(), true, by_date));
            reading_.days.push_back(day_of(block.day_of_b(), false, by_date));
        }
    }

    void as_allotted() {
        PairDifferences pairs;
        std::vector<double> of_b;
        for (std::size_t i = 0; i < trial_.blocks.size(); ++i) {
            const TrialDay& a = reading_.days[2 * i];
            const TrialDay& b = reading_.days[2 * i + 1];
            if (a.value && b.value) {
                pairs.differences.push_back(*a.value - *b.value);
                pairs.a_first.push_back(trial_.blocks[i].a_first);
                of_b.push_back(*b.value);
            }
        }
        PairsRead& read = reading_.as_allotted;
        read.pairs = static_cast<int>(pairs.differences.size());
        if (read.pairs == 0) {
            return;
        }
        const BlockRandomisation found =
            block_randomisation(pairs.differences, pairs.a_first, trial_.draw, trial_.seed);
        read.estimate = found.test.mean;
        read.p = found.test.p;
        read.at_least = found.test.at_least;
        read.patterns = found.test.patterns;
        read.interval95 = found.interval95;
        read.t95 = t_interval(pairs.differences);
        keep_sensor_error(read.interval95, read, trial_.outcome);
        keep_sensor_error(read.t95, read, trial_.outcome);
        keep_possible(read.interval95, mean_of(of_b), trial_.outcome);
        keep_possible(read.t95, mean_of(of_b), trial_.outcome);
    }

    void as_done() {
        if (reading_.broken == 0) {
            return;
        }
        std::vector<double> differences;
        std::vector<double> of_b;
        for (std::size_t i = 0; i < trial_.blocks.size(); ++i) {
            const TrialDay& one = reading_.days[2 * i];
            const TrialDay& other = reading_.days[2 * i + 1];
            if (!one.value || !other.value) {
                continue;
            }
            if (done_or_allotted(one) == ArmDone::a && done_or_allotted(other) == ArmDone::b) {
                differences.push_back(*one.value - *other.value);
                of_b.push_back(*other.value);
            } else if (done_or_allotted(one) == ArmDone::b &&
                       done_or_allotted(other) == ArmDone::a) {
                differences.push_back(*other.value - *one.value);
                of_b.push_back(*one.value);
            }
        }
        PairsRead read;
        read.pairs = static_cast<int>(differences.size());
        if (!differences.empty()) {
            read.estimate = mean_of(differences);
            read.t95 = t_interval(differences);
            keep_sensor_error(read.t95, read, trial_.outcome);
            keep_possible(read.t95, mean_of(of_b), trial_.outcome);
        }
        reading_.as_done = read;
    }

    static ArmDone done_or_allotted(const TrialDay& day) {
        return day.done != ArmDone::not_known ? day.done : day.allotted_a ? ArmDone::a : ArmDone::b;
    }

    double carbohydrate_apart() const {
        std::array<std::vector<double>, 2> grams;
        for (const TrialDay& day : reading_.days) {
            if (day.value && day.carbohydrate_g) {
                grams.at(day.allotted_a ? 0 : 1).push_back(*day.carbohydrate_g);
            }
        }
        if (grams[0].size() < 2 || grams[1].size() < 2) {
            return 0;
        }
        const double dof = static_cast<double>(grams[0].size() + grams[1].size()) - 2;
        const double sd = std::sqrt((squares_of(grams[0]) + squares_of(grams[1])) / dof);
        const double apart = std::abs(mean_of(grams[0]) - mean_of(grams[1]));
        return sd > 0 ? apart / sd : apart > 0 ? std::numeric_limits<double>::infinity() : 0;
    }
};

}  // namespace

TrialReading read_trial(const Trial& trial, const ReviewInput& input, const DoneOn& told) {
    return Reader(trial, input, told).read();
}

}  // namespace tracewright
