#include "findings/question_findings.hpp"

#include "findings/gathered_rows.hpp"
#include "findings/question_sentences.hpp"
#include "inference/several_questions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace tracewright {

namespace {

// Of two causes, from which on a reader is told. Ours: below it the interval widens by an eighth at
// most, and from it on by an eighth at least.
constexpr double travels_together_from = 0.45;

// Causes whose absence from the diary is read as none.
bool absence_is_none(Cause cause) {
    return cause == Cause::movement || cause == Cause::walk_after || cause == Cause::alcohol ||
           cause == Cause::strength || cause == Cause::work_shift || cause == Cause::walk_before;
}

std::string reasons_counted(std::span<const LeftOut> left_out) {
    std::map<std::string, int> counts;
    for (const LeftOut& one : left_out) {
        ++counts[one.why];
    }
    std::vector<std::pair<int, std::string>> order;
    for (const auto& [why, count] : counts) {
        order.emplace_back(-count, why);
    }
    std::sort(order.begin(), order.end());
    std::string text;
    for (const auto& [count, why] : order) {
        text += (text.empty() ? "" : "; ") + fmt::format("{} {}", -count, why);
    }
    return text;
}

const char* answer_words(Answer answer) {
    return answer == Answer::yes                             ? "yes"
           : answer == Answer::no_difference_worth_acting_on ? "no difference worth acting on"
                                                             : "can't tell";
}

// What was written as medicine during each wear.
std::vector<std::set<std::string>> medicines_by_wear(const ReviewInput& input) {
    std::vector<std::set<std::string>> by_wear;
    for (const Wear& wear : input.wears) {
        std::set<std::string> written;
        for (const DiaryEntry& entry : input.diary) {
            if (!wear.empty() && entry.kind == DiaryKind::medicine &&
                wear.sensed_span().contains(entry.at)) {
                written.insert(food_key(entry.text));
            }
        }
        by_wear.push_back(std::move(written));
    }
    return by_wear;
}

bool medicine_changed(const ReviewInput& input, const DriverRows& rows) {
    const auto by_wear = medicines_by_wear(input);
    const std::set<std::size_t> used(rows.wear.begin(), rows.wear.end());
    const std::set<std::string>* first = nullptr;
    for (const std::size_t wear : used) {
        if (first != nullptr && by_wear[wear] != *first) {
            return true;
        }
        first = &by_wear[wear];
    }
    return false;
}

RowError row_error(Outcome outcome) {
    const ValueError error = value_error_of(facts_of(outcome).unit);
    return {error.least_sd, error.share};
}

class Teller {
  public:
    Teller(const ReviewInput& input, const QuestionAnswers& answers, const GatheredRows& gathered,
           const DriverFit& fit, std::span<const Cause> causes)
        : input_(input), answers_(answers), gathered_(gathered), fit_(fit), causes_(causes) {
        const DriverRows trusted = without_suspect(gathered);
        if (trusted.rows() < gathered.rows.rows()) {
            trusted_ =
                driver_fit(trusted, driver_settings(causes), answers.worth,
                           answers.asked_together - causes.size(), row_error(answers.outcome));
        }
    }

    QuestionFinding tell(std::size_t driver) const {
        QuestionFinding told;
        told.cause = causes_[driver];
        told.result = fit_.drivers[driver];
        told.others = others_say(told.cause, answers_.outcome);
        const bool open = told.result.gate == DriverGate::open;
        Finding& finding = told.finding;
        finding.code =
            std::string(facts_of(answers_.outcome).code) + "." + facts_of(told.cause).code;
        finding.question = question_sentence(answers_.outcome, told.cause);
        if (open && poorly_noted(told.cause)) {
            told.result.answer = Answer::cannot_tell;
        }
        finding.answer = told.result.answer;
        if (open) {
            finding.estimate = estimate(told.result, told.cause);
            if (told.others.prior && told.result.deviation > 0) {
                told.both = joined(*told.others.prior, {told.result.effect, told.result.deviation});
            }
        }
        finding.sentence =
            answer_sentence(answers_, fit_with(told, driver), driver, causes_, gathered_.dates,
                            input_.unit, input_.zones.writing(), poorly_noted(told.cause));
        finding.client_sentence = client_sentence(answers_.outcome, told.cause, told.result);
        finding.next =
            open && poorly_noted(told.cause)
                ? Next{NextStep::collect_more,
                       fmt::format("Note {} on every day of the next fortnight.",
                                   facts_of(told.cause).to_note)}
                : unless_in_pregnancy(next_step(answers_.outcome, told.cause, told.result),
                                      input_.goals);
        finding.evidence = evidence(driver);
        finding.caveats = caveats(told, driver);
        return told;
    }

  private:
    const ReviewInput& input_;
    const QuestionAnswers& answers_;
    const GatheredRows& gathered_;
    const DriverFit& fit_;
    std::span<const Cause> causes_;
    std::optional<DriverFit> trusted_;

    // A day on which nothing eaten is noted has no meal to read, and counts as one not noted: the
    // days left unwritten may be the bad ones. Where other food is, the meal may have been left
    // out.
    double noted_share(Cause cause) const {
        const int all = gathered_.with_outcome + gathered_.nothing_eaten_noted;
        return all == 0 ? 1 : static_cast<double>(gathered_.noted.at(cause)) / all;
    }
    bool meals_seldom_noted() const {
        return gathered_.days - gathered_.meal_not_noted < 0.7 * gathered_.days;
    }
    bool poorly_noted(Cause cause) const { return noted_share(cause) < 0.7; }

    DriverFit fit_with(const QuestionFinding& told, std::size_t driver) const {
        DriverFit fit = fit_;
        fit.drivers[driver] = told.result;
        return fit;
    }

    Estimate estimate(const DriverResult& result, Cause cause) const {
        Estimate told;
        const bool glucose = facts_of(answers_.outcome).unit == OutcomeUnit::glucose;
        const auto shown = [&](double value) {
            return glucose ? converted(value, GlucoseUnit::mg_per_dl, input_.unit) : value;
        };
        told.value = shown(result.effect);
        told.unit = glucose ? name_of(input_.unit) : "h";
        told.interval95 = {{shown(result.interval95[0]), shown(result.interval95[1])}};
        told.per = facts_of(cause).change;
        return told;
    }

    Evidence evidence(std::size_t driver) const {
        Evidence evidence;
        evidence.used = answers_.rows;
        evidence.used_what = rows_called(answers_.outcome, 2);
        evidence.left_out = static_cast<int>(answers_.left_out.size());
        evidence.left_out_why = reasons_counted(answers_.left_out);
        evidence.method = fmt::format(
            "regression with AR(1) errors on a grid, restarted at each wear; prior of the "
            "correlation normal 0.2, 0.25; {} asked together (Holm); worth acting on {:.2g} {}",
            answers_.asked_together, shown_worth(),
            facts_of(answers_.outcome).unit == OutcomeUnit::hours ? "h" : name_of(input_.unit));
        evidence.seed = input_.seed;
        evidence.adjusted_for = adjusted_for(driver);
        return evidence;
    }

    // What the model held equal beside it; empty where it is in no model.
    std::vector<std::string> adjusted_for(std::size_t driver) const {
        const DriverGate gate = fit_.drivers[driver].gate;
        const bool together = gate == DriverGate::inseparable;
        if (gate != DriverGate::open && !together) {
            return {};
        }
        std::vector<std::string> names = {"wear"};
        for (const std::size_t adjuster : fit_.adjusters) {
            names.push_back(gathered_.adjusted_for[adjuster]);
        }
        for (const std::size_t other : accounted_for(fit_, driver)) {
            names.emplace_back(facts_of(causes_[other]).words);
        }
        return names;
    }

    double shown_worth() const {
        return facts_of(answers_.outcome).unit == OutcomeUnit::hours
                   ? answers_.worth
                   : converted(answers_.worth, GlucoseUnit::mg_per_dl, input_.unit);
    }

    std::vector<Caveat> caveats(const QuestionFinding& told, std::size_t driver) const {
        std::vector<Caveat> list;
        const auto add = [&](CaveatKind kind, std::string sentence) {
            list.push_back({kind, std::move(sentence)});
        };
        const std::string rows = rows_called(answers_.outcome, 2);
        if (meals_seldom_noted()) {
            add(CaveatKind::diary_incomplete, seldom_noted());
        } else if (poorly_noted(told.cause)) {
            add(CaveatKind::diary_incomplete,
                fmt::format("{} was noted on {:.0f} % of the {} that could be read; at least 70 % "
                            "are needed.",
                            facts_of(told.cause).words, 100 * noted_share(told.cause), rows));
        }
        if (const std::string differs = unlike_without_note(told.cause); !differs.empty()) {
            add(CaveatKind::diary_incomplete, differs);
        }
        const std::set<std::size_t> wears(gathered_.rows.wear.begin(), gathered_.rows.wear.end());
        if (wears.size() > 1) {
            add(CaveatKind::several_wears,
                fmt::format("{} wears are joined; each has its own level.", wears.size()));
        }
        if (medicine_changed(input_, gathered_.rows)) {
            add(CaveatKind::medicine_changed,
                "What was written as medicine differs between the wears: habits can't take the "
                "credit for a difference between them.");
        }
        const bool of_the_pair = fit_.pair[0] == driver || fit_.pair[1] == driver;
        if (told.result.gate == DriverGate::open && of_the_pair &&
            std::abs(fit_.pair_correlation) >= travels_together_from) {
            const std::size_t other = fit_.pair[0] == driver ? fit_.pair[1] : fit_.pair[0];
            const std::string parting =
                dates_that_part(fit_, gathered_.dates, input_.zones.writing());
            add(CaveatKind::travels_together,
                fmt::format("It travelled together with {} (correlation {:.2f}); that widens the "
                            "interval {:.1f} times.{}",
                            facts_of(causes_[other]).words, fit_.pair_correlation,
                            std::sqrt(told.result.vif),
                            parting.empty() ? "" : " They part on " + parting + "."));
        }
        if (fit_.correlation > 0.6) {
            add(CaveatKind::strong_day_to_day,
                "Neighbouring values are very alike: intervals may be too narrow.");
        }
        if (gathered_.ill > 0) {
            add(CaveatKind::illness_left_out,
                fmt::format("{} {} with illness or cortisone noted are left out.", gathered_.ill,
                            rows));
        }
        suspect_caveat(list, told, driver);
        if (absence_is_none(told.cause)) {
            add(CaveatKind::absence_read_as_none,
                "On a day of which something was written no entry is read as none: what was not "
                "written down weakens a difference.");
        }
        if (told.others.prior && told.result.deviation > 0 &&
            told.result.gate == DriverGate::open &&
            disagree(*told.others.prior, {told.result.effect, told.result.deviation})) {
            add(CaveatKind::unlike_others,
                "This client's records and what was published in others disagree.");
        }
        if (input_.zones.zone_at(input_.as_of).is_floating()) {
            add(CaveatKind::zone_not_told, "No time zone was told: clock changes are not known.");
        }
        return list;
    }

    std::string seldom_noted() const {
        const std::string text =
            fmt::format("On {} of {} days {} was noted", gathered_.days - gathered_.meal_not_noted,
                        gathered_.days, rows_called(answers_.outcome, 1));
        return gathered_.nothing_eaten_noted > 0
                   ? fmt::format(
                         "{}; on {} nothing eaten at all. At least 70 % are needed: what "
                         "is missing may not be missing at random.",
                         text, gathered_.nothing_eaten_noted)
                   : text +
                         ": whether it was left out on the others, or not written, is not known.";
    }

    void suspect_caveat(std::vector<Caveat>& list, const QuestionFinding& told,
                        std::size_t driver) const {
        if (!trusted_) {
            return;
        }
        const auto count = std::count(gathered_.suspect.begin(), gathered_.suspect.end(), true);
        const DriverResult& other = trusted_->drivers[driver];
        std::string then = "without them it can't be told";
        if (other.gate == DriverGate::open && told.result.gate == DriverGate::open) {
            then = fmt::format("without them: {} ({})",
                               difference_words(other.effect, answers_.outcome, input_.unit),
                               interval_words(other.interval95, answers_.outcome, input_.unit));
            if (other.answer != told.result.answer) {
                then += fmt::format(", and the answer would be '{}'", answer_words(other.answer));
            }
        }
        list.push_back(
            {CaveatKind::sensor_suspect,
             fmt::format("{} of the {} {} a suspect stretch of the sensor; {}.", count,
                         rows_called(answers_.outcome, 2), count == 1 ? "holds" : "hold", then)});
    }

    std::string unlike_without_note(Cause cause) const {
        const auto found = gathered_.outcome_by_noted.find(cause);
        if (found == gathered_.outcome_by_noted.end()) {
            return {};
        }
        const auto& [without, with] = found->second;
        if (without.size() < 3 || with.size() < 3) {
            return {};
        }
        const auto mean_and_error = [](const std::vector<double>& values) {
            double mean = 0;
            for (const double v : values) {
                mean += v / static_cast<double>(values.size());
            }
            double squares = 0;
            for (const double v : values) {
                squares += (v - mean) * (v - mean);
            }
            const auto n = static_cast<double>(values.size());
            return std::pair(mean, squares / (n - 1) / n);
        };
        const auto [mean_without, error_without] = mean_and_error(without);
        const auto [mean_with, error_with] = mean_and_error(with);
        const double difference = mean_without - mean_with;
        if (std::abs(difference) <= 2 * std::sqrt(error_without + error_with)) {
            return {};
        }
        return fmt::format(
            "Where {} was not noted, {} was {}: what is missing is not missing at "
            "random.",
            facts_of(cause).words, facts_of(answers_.outcome).words,
            difference_words(difference, answers_.outcome, input_.unit));
    }
};

}  // namespace

CountedTrace trace_of_questions(const ReviewInput& input) {
    if (!input.window) {
        return counted_trace(input.wears, input.prefer_wear);
    }
    std::vector<Wear> wears = input.wears;
    for (Wear& wear : wears) {
        std::erase_if(wear.readings,
                      [&](const Reading& reading) { return !input.window->contains(reading.at); });
    }
    return counted_trace(wears, input.prefer_wear);
}

QuestionAnswers answer_questions(const ReviewInput& input, Outcome outcome,
                                 std::span<const Cause> causes, const QuestionSettings& settings) {
    const auto rows = question_rows(input, trace_of_questions(input), outcome, causes);
    return answers_from_rows(input, outcome, rows, causes, settings);
}

QuestionAnswers answers_from_rows(const ReviewInput& input, Outcome outcome,
                                  std::span<const QuestionRow> rows, std::span<const Cause> causes,
                                  const QuestionSettings& settings) {
    QuestionAnswers answers;
    answers.outcome = outcome;
    answers.worth = settings.worth.value_or(facts_of(outcome).worth_acting_on);
    answers.asked_together = causes.size() + settings.asked_besides;
    const GatheredRows gathered = gathered_rows(rows, causes, answers.left_out);
    answers.rows = static_cast<int>(gathered.rows.rows());
    answers.of_days = gathered.meal_not_noted > 0 ? gathered.days : 0;
    answers.fit = driver_fit(gathered.rows, driver_settings(causes), answers.worth,
                             settings.asked_besides, row_error(outcome));
    const Teller teller(input, answers, gathered, *answers.fit, causes);
    std::vector<QuestionFinding> findings;
    for (std::size_t driver = 0; driver < causes.size(); ++driver) {
        findings.push_back(teller.tell(driver));
    }
    answers.findings = std::move(findings);
    return answers;
}

QuestionAnswers scan_causes(const ReviewInput& input, Outcome outcome,
                            const QuestionSettings& settings) {
    QuestionAnswers answers;
    answers.outcome = outcome;
    answers.scan = true;
    answers.worth = settings.worth.value_or(facts_of(outcome).worth_acting_on);
    const CountedTrace trace = trace_of_questions(input);
    std::vector<Cause> causes;
    for (const CauseFacts& facts : all_causes()) {
        if (can_be_asked(outcome, facts.cause) && facts.cause != Cause::weekend) {
            causes.push_back(facts.cause);
        }
    }
    causes.push_back(Cause::weekend);
    std::vector<QuestionRow> rows = question_rows(input, trace, outcome, causes);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const bool neighbour = i > 0 && rows[i - 1].outcome && rows[i - 1].wear == rows[i].wear;
        if (neighbour) {
            rows[i].adjusters["the value before"] = *rows[i - 1].outcome;
        }
    }
    std::vector<double> p;
    for (const Cause cause : causes) {
        std::vector<QuestionRow> own = rows;
        for (QuestionRow& row : own) {
            if (cause != Cause::weekend) {
                row.adjusters["weekend"] = row.causes.at(Cause::weekend);
            }
        }
        const std::array<Cause, 1> one{cause};
        QuestionAnswers alone;
        alone.outcome = outcome;
        alone.worth = answers.worth;
        alone.asked_together = 1;
        const GatheredRows gathered = gathered_rows(own, one, alone.left_out);
        alone.rows = static_cast<int>(gathered.rows.rows());
        const DriverFit fit =
            driver_fit(gathered.rows, driver_settings(one), answers.worth, 0, row_error(outcome));
        if (fit.drivers[0].gate != DriverGate::open) {
            continue;  // nothing to scan: not varied, or hardly noted
        }
        QuestionFinding told = Teller(input, alone, gathered, fit, one).tell(0);
        answers.rows = std::max(answers.rows, alone.rows);
        p.push_back(told.result.p);
        answers.findings.push_back(std::move(told));
    }
    const std::vector<double> adjusted = benjamini_hochberg_adjusted(p);
    for (std::size_t i = 0; i < answers.findings.size(); ++i) {
        QuestionFinding& told = answers.findings[i];
        told.scan_p = adjusted[i];
        told.finding.answer = Answer::cannot_tell;
        const bool trial = adjusted[i] <= 0.10;
        told.finding.sentence =
            fmt::format("{}: {} ({}), looked at on its own among {}{}.", facts_of(told.cause).words,
                        difference_words(told.result.effect, outcome, input.unit),
                        interval_words(told.result.interval95, outcome, input.unit), p.size(),
                        trial ? "; it stands out from chance, which is not an answer"
                              : "; nothing that stands out from chance");
        told.finding.client_sentence.clear();
        told.finding.next =
            trial ? unless_in_pregnancy(next_of_a_scan(outcome, told.cause), input.goals) : Next{};
        told.finding.evidence.method += "; a scan, each on its own (Benjamini-Hochberg, 0.10)";
    }
    std::stable_sort(
        answers.findings.begin(), answers.findings.end(),
        [](const QuestionFinding& a, const QuestionFinding& b) { return a.scan_p < b.scan_p; });
    return answers;
}

}  // namespace tracewright
