#include "findings/edge_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tracewright {

namespace {

std::chrono::seconds hours_of_day(double percent) {
    return std::chrono::seconds{std::lround(percent / 100 * 86400)};
}

void judge(const Goals& goals, const Measure& in_range, Finding& finding) {
    const double goal = *goals.in_range_above;
    const std::string said =
        fmt::format("The goal for {} is more than {} ({}).", name_of(goals.kind),
                    hours_and_minutes(hours_of_day(goal)), percent_words(goal));
    finding.sentence += " " + said;
    if (!in_range.interval95) {
        finding.answer = Answer::cannot_tell;
    } else if ((*in_range.interval95)[1] <= goal) {
        finding.answer = Answer::yes;
        finding.sentence += " These days lie below it.";
    } else if ((*in_range.interval95)[0] > goal) {
        finding.answer = Answer::no_difference_worth_acting_on;
        finding.sentence += " These days lie above it.";
    } else {
        finding.answer = Answer::cannot_tell;
        finding.sentence += " These days fit with either side of it.";
        finding.next = {NextStep::collect_more, "More days of readings narrow this down."};
    }
}

}  // namespace

Finding hours_in_range_finding(const FirstReview& review) {
    Finding finding;
    finding.code = "in_range";
    finding.question = "Are there hours in range to gain?";
    const Goals& goals = review.input.goals;
    if (goals.kind == GoalKind::pregnancy) {
        const TimeByRange time =
            time_by_range(cut(review.trace.view(), review.trace.window), shown_range(goals));
        finding.question = "How many hours are between 63 and 140 mg/dL?";
        if (review.input.unit == GlucoseUnit::mmol_per_l) {
            finding.question = "How many hours are between 3.5 and 7.8 mmol/L?";
        }
        if (time.sensed().count() > 0) {
            const double percent = 100 * static_cast<double>(time.in_range.count()) /
                                   static_cast<double>(time.sensed().count());
            finding.sentence = fmt::format(
                "{} of the 24 hours between {} and {}, {} of the time "
                "seen. ",
                hours_and_minutes(hours_of_day(percent)), edge_words(63, review.input.unit),
                edge_words(140, review.input.unit), percent_words(percent));
        }
        finding.sentence +=
            "In pregnancy, while planning one, or when unsure: your maternity or diabetes clinic "
            "leads. No goal, plan or trial is set here.";
        finding.next = {NextStep::contact_prescriber, "Ring the maternity or diabetes clinic."};
        return finding;
    }
    const Measure* in_range = find(review.measures, "in_range");
    if (in_range == nullptr || !in_range->value) {
        finding.sentence = "Hours in range can't be told: there are no readings to count.";
        return finding;
    }
    finding.estimate =
        Estimate{*in_range->value, in_range->unit, in_range->interval95, "of the time seen"};
    finding.evidence = {in_range->days,
                        "days",
                        review.fitness.days - in_range->days,
                        "less than 70 % of the day seen",
                        "daily shares, AR(1) grid",
                        review.input.seed,
                        {}};
    finding.sentence = fmt::format(
        "{} of the 24 hours in range ({} to {}), {} of the time seen",
        hours_and_minutes(hours_of_day(*in_range->value)), edge_words(70, review.input.unit),
        edge_words(180, review.input.unit), percent_words(*in_range->value));
    if (in_range->interval95) {
        finding.sentence +=
            fmt::format("; {} days put it {}.", in_range->days,
                        between_words(hours_and_minutes(hours_of_day((*in_range->interval95)[0])),
                                      hours_and_minutes(hours_of_day((*in_range->interval95)[1]))));
        finding.client_sentence = fmt::format("About {} hours of the day were in range.",
                                              std::lround(*in_range->value * 24 / 100));
    } else {
        finding.sentence += fmt::format(". How far to trust that can't be told: {}.",
                                        in_range->no_interval_because);
    }
    if (goals.in_range_above) {
        judge(goals, *in_range, finding);
    }
    return finding;
}

}  // namespace tracewright
