#include "findings/question_sentences.hpp"

#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tracewright {

std::string size_words(double size, Outcome outcome, GlucoseUnit unit) {
    if (facts_of(outcome).unit == OutcomeUnit::hours) {
        return fmt::format("{:.1f} h", size);
    }
    return glucose_words(converted(size, GlucoseUnit::mg_per_dl, unit), unit);
}

namespace {

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

// "Fasting glucose is", "hours in range a day are".
std::string is_or_are(Outcome outcome) {
    return facts_of(outcome).unit == OutcomeUnit::hours ? "are" : "is";
}

bool rounds_to_nothing(double difference, Outcome outcome, GlucoseUnit unit) {
    if (facts_of(outcome).unit == OutcomeUnit::hours) {
        return std::abs(difference) < 0.05;
    }
    return rounded_for_display(std::abs(converted(difference, GlucoseUnit::mg_per_dl, unit)),
                               unit) == 0;
}

std::string others_named(std::span<const Cause> causes, const std::vector<std::size_t>& others) {
    std::string names;
    for (const std::size_t other : others) {
        names += (names.empty() ? "" : " and ") + std::string(facts_of(causes[other]).words);
    }
    return names;
}

std::string too_few(const QuestionAnswers& answers, Cause cause) {
    const int more = std::max(1, 10 - answers.rows);
    const char* note = facts_of(cause).to_note;
    return fmt::format(
        "{} usable {}; at least 10 are needed, and 6 more than what is estimated. {} "
        "more {}{}{}{} would do.",
        answers.rows, rows_called(answers.outcome, answers.rows), more,
        rows_called(answers.outcome, more), *note != 0 ? " with " : "", note,
        *note != 0 ? " noted" : "");
}

std::string no_contrast(const DriverResult& result, Outcome outcome, Cause cause, int rows) {
    const CauseFacts& facts = facts_of(cause);
    if (facts.yes_no) {
        return fmt::format("{}: {} of {} {}. At least 4 with and 4 without are needed to compare.",
                           capital(facts.words), result.yes, rows, rows_called(outcome, rows));
    }
    return fmt::format("{} hardly varied (SD {:.1f} {}): these {} can't show what goes with it.",
                       capital(facts.words), result.spread, facts.unit, rows_called(outcome, rows));
}

}  // namespace

std::string dates_that_part(const DriverFit& fit, const std::vector<CivilDate>& dates,
                            WayOfWriting way) {
    std::vector<CivilDate> parting;
    for (const std::size_t row : fit.parts_them) {
        if (parting.size() < 5 && row < dates.size()) {
            parting.push_back(dates[row]);
        }
    }
    std::sort(parting.begin(), parting.end());
    std::string names;
    for (const CivilDate date : parting) {
        names += (names.empty() ? "" : ", ") + day_words(date, way);
    }
    return names;
}

namespace {

std::string inseparable(const QuestionAnswers& answers, const DriverFit& fit,
                        std::span<const Cause> causes, const std::vector<CivilDate>& dates,
                        GlucoseUnit unit, WayOfWriting way) {
    const char* a = facts_of(causes[fit.pair[0]]).words;
    const char* b = facts_of(causes[fit.pair[1]]).words;
    std::string text = fmt::format("{} and {} travelled together (correlation {:.2f}).", capital(a),
                                   b, fit.pair_correlation);
    if (fit.joint) {
        text += fmt::format(
            " Moved together from one usual end to the other, {} {} {} ({}); which of the two "
            "can't be told.",
            facts_of(answers.outcome).words, is_or_are(answers.outcome),
            difference_words(*fit.joint, answers.outcome, unit),
            interval_words(fit.joint95, answers.outcome, unit));
    }
    const std::string dates_text = dates_that_part(fit, dates, way);
    if (!dates_text.empty()) {
        text += " They part on " + dates_text + ".";
    }
    return text;
}

}  // namespace

std::string rows_called(Outcome outcome, int count) {
    const OutcomeFacts& facts = facts_of(outcome);
    const char* one = facts.of == OutcomeOf::night ? "night"
                      : facts.of == OutcomeOf::day ? "day"
                                                   : name_of(*facts.slot);
    const bool lunch = facts.slot == MealSlot::lunch;
    return count == 1 ? one : std::string(one) + (lunch ? "es" : "s");
}

std::string question_sentence(Outcome outcome, Cause cause) {
    return fmt::format("{} {} different with {}?", capital(is_or_are(outcome)),
                       facts_of(outcome).words, facts_of(cause).change);
}

std::string difference_words(double difference, Outcome outcome, GlucoseUnit unit) {
    if (rounds_to_nothing(difference, outcome, unit)) {
        return "about the same";  // of an estimate: that nothing differs, it does not show
    }
    const bool hours = facts_of(outcome).unit == OutcomeUnit::hours;
    const char* direction =
        difference > 0 ? (hours ? "more" : "higher") : (hours ? "less" : "lower");
    return size_words(std::abs(difference), outcome, unit) + " " + direction;
}

namespace {

std::string end_words(double end, Outcome outcome, GlucoseUnit unit) {
    return rounds_to_nothing(end, outcome, unit) ? "the same"
                                                 : difference_words(end, outcome, unit);
}

}  // namespace

std::string interval_words(const std::array<double, 2>& interval, Outcome outcome,
                           GlucoseUnit unit) {
    const bool one_side = interval[0] * interval[1] > 0 &&
                          !rounds_to_nothing(interval[0], outcome, unit) &&
                          !rounds_to_nothing(interval[1], outcome, unit);
    if (one_side) {
        const double near = std::min(std::abs(interval[0]), std::abs(interval[1]));
        const double far = std::max(std::abs(interval[0]), std::abs(interval[1]));
        const double sign = interval[0] > 0 ? 1 : -1;
        const std::string end = difference_words(sign * far, outcome, unit);
        std::string number = size_words(near, outcome, unit);
        if (number == size_words(far, outcome, unit)) {
            return "95 % interval " + from_to_words(end, end);
        }
        number.resize(number.find(' '));
        return "95 % interval " + from_to_words(number, end);
    }
    const std::string from = end_words(interval[0], outcome, unit);
    const std::string to = end_words(interval[1], outcome, unit);
    return from == to ? "95 % interval " + to + " at either end"
                      : "95 % interval from " + from + " to " + to;
}

std::string answer_sentence(const QuestionAnswers& answers, const DriverFit& fit,
                            std::size_t driver, std::span<const Cause> causes,
                            const std::vector<CivilDate>& dates, GlucoseUnit unit, WayOfWriting way,
                            bool seldom_noted) {
    const Outcome outcome = answers.outcome;
    const Cause cause = causes[driver];
    const DriverResult& result = fit.drivers[driver];
    switch (result.gate) {
        case DriverGate::too_few:
            return too_few(answers, cause);
        case DriverGate::too_many_drivers:
            return fmt::format(
                "{} causes asked of {} {}: at most one for six can be told. Ask "
                "fewer at once, or collect more.",
                causes.size(), answers.rows, rows_called(outcome, answers.rows));
        case DriverGate::flat_outcome:
            return fmt::format("{} did not vary over these {} {}: nothing can go with it.",
                               capital(facts_of(outcome).words), answers.rows,
                               rows_called(outcome, answers.rows));
        case DriverGate::no_contrast:
            return no_contrast(result, outcome, cause, answers.rows);
        case DriverGate::inseparable:
            return inseparable(answers, fit, causes, dates, unit, way);
        case DriverGate::open:
            break;
    }
    const std::string others = others_named(causes, accounted_for(fit, driver));
    const std::string found = fmt::format(
        "With {}, {} {} {} ({}), over {} {}{}{}.", facts_of(cause).change, facts_of(outcome).words,
        is_or_are(outcome), difference_words(result.effect, outcome, unit),
        interval_words(result.interval95, outcome, unit), answers.rows,
        rows_called(outcome, answers.rows),
        answers.of_days > 0 ? fmt::format(" of {} days", answers.of_days) : "",
        others.empty() ? "" : ", " + others + " accounted for");
    if (seldom_noted) {
        return found + " The diary holds too few of the days to tell.";
    }
    if (result.answer == Answer::yes) {
        return found + " The two go together.";
    }
    if (result.answer == Answer::no_difference_worth_acting_on) {
        return found + " That is no difference worth acting on.";
    }
    if (result.p_adjusted <= 0.05) {
        return found +
               " A difference is there; whether it is large enough to act on, these data "
               "can't tell.";
    }
    if (result.interval95[0] > 0 || result.interval95[1] < 0) {
        return found +
               " Alone it would stand out; of so many questions asked at once some do by chance, "
               "so these data can't tell.";
    }
    return found + " These data can't tell.";
}

std::string client_sentence(Outcome outcome, Cause cause, const DriverResult& result) {
    if (result.gate == DriverGate::open && result.answer == Answer::yes) {
        return fmt::format(
            "In your own records, {} goes with {} {}. That they go together does not "
            "show which comes from which.",
            facts_of(cause).change, result.effect > 0 ? "higher" : "lower",
            facts_of(outcome).words);
    }
    if (result.answer == Answer::no_difference_worth_acting_on) {
        return fmt::format(
            "In your own records, {} goes with no difference in {} that is worth a "
            "change.",
            facts_of(cause).change, facts_of(outcome).words);
    }
    return fmt::format("Your records can't tell yet whether {} goes with {}.",
                       facts_of(cause).change, facts_of(outcome).words);
}

bool can_be_drawn_by_lot(Cause cause) {
    switch (cause) {
        case Cause::alcohol:
        case Cause::stress:
        case Cause::weekend:
        case Cause::travel:
        case Cause::work_shift:
        case Cause::cycle:
            return false;
        case Cause::sleep:
        case Cause::bedtime:
        case Cause::dinner_time:
        case Cause::last_meal_to_bed:
        case Cause::dinner_carbohydrate:
        case Cause::dinner_energy:
        case Cause::meal_carbohydrate:
        case Cause::day_carbohydrate:
        case Cause::movement:
        case Cause::walk_after:
        case Cause::meal_energy:
        case Cause::meal_order:
        case Cause::strength:
        case Cause::walk_before:
        case Cause::carbohydrate_before:
            break;
    }
    return true;
}

Next next_of_a_scan(Outcome outcome, Cause cause) {
    const CauseFacts& facts = facts_of(cause);
    if (can_be_drawn_by_lot(cause)) {
        return {NextStep::run_trial, fmt::format("Worth a trial: {} varied by lot.", facts.words)};
    }
    return {NextStep::collect_more,
            fmt::format("Worth a question of its own on more {}{}{}: it is nothing to draw by lot.",
                        rows_called(outcome, 2), *facts.to_note != 0 ? ", noting " : "",
                        facts.to_note)};
}

Next next_step(Outcome outcome, Cause cause, const DriverResult& result) {
    const CauseFacts& facts = facts_of(cause);
    const Next more_noted{NextStep::collect_more,
                          fmt::format("It is nothing to draw by lot: more {} with and without it, "
                                      "noted beside what else differed on them, tell more.",
                                      rows_called(outcome, 2))};
    switch (result.gate) {
        case DriverGate::too_few:
        case DriverGate::too_many_drivers:
            return {NextStep::collect_more,
                    fmt::format("Collect more {}{}{}.", rows_called(outcome, 2),
                                *facts.to_note != 0 ? ", noting " : "", facts.to_note)};
        case DriverGate::flat_outcome:
            return {NextStep::nothing, ""};
        case DriverGate::no_contrast:
        case DriverGate::inseparable:
            if (!can_be_drawn_by_lot(cause)) {
                return more_noted;
            }
            return {
                NextStep::run_trial,
                fmt::format("A trial: vary {} by lot while the rest stays as it is.", facts.words)};
        case DriverGate::open:
            break;
    }
    if (result.answer == Answer::no_difference_worth_acting_on) {
        return {NextStep::nothing, ""};
    }
    if (result.answer == Answer::yes && !can_be_drawn_by_lot(cause)) {
        return {NextStep::collect_more,
                "What goes together need not come from one another. " + more_noted.sentence};
    }
    if (result.answer == Answer::yes) {
        return {NextStep::run_trial,
                fmt::format("What goes together need not come from one another: a trial, {} varied "
                            "by lot, would show it.",
                            facts.words)};
    }
    if (result.more_rows) {
        return {NextStep::collect_more,
                fmt::format("About {} more {} like these would tell, if the estimate holds.",
                            *result.more_rows, rows_called(outcome, *result.more_rows))};
    }
    if (!can_be_drawn_by_lot(cause)) {
        return {NextStep::nothing,
                fmt::format("More {} of the same kind would not tell within four months, and it is "
                            "nothing to draw by lot: noting what else differs on them may show "
                            "more.",
                            rows_called(outcome, 2))};
    }
    return {NextStep::run_trial,
            fmt::format("More {} of the same kind would not tell within four months: a trial with "
                        "{} varied by lot would.",
                        rows_called(outcome, 2), facts.words)};
}

Next unless_in_pregnancy(Next next, const Goals& goals) {
    if (next.step != NextStep::run_trial || goals.kind != GoalKind::pregnancy) {
        return next;
    }
    return {NextStep::contact_prescriber,
            "No trial is offered in pregnancy, while planning one or when unsure: the maternity or "
            "diabetes clinic leads."};
}

}  // namespace tracewright
