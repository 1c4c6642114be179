#include "findings/edge_words.hpp"
#include "findings/hours_of_day.hpp"
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

// "35 min of the 2 h that the sensor saw": what can be said of less than most of a day.
std::string of_what_was_seen(double percent, std::chrono::seconds seen) {
    return fmt::format("{} of the {} that the sensor saw",
                       hours_and_minutes(std::chrono::seconds{
                           std::lround(percent / 100 * static_cast<double>(seen.count()))}),
                       hours_and_minutes(seen));
}

void say_too_little(const FirstReview& review, const Measure& in_range, Finding& finding) {
    finding.sentence =
        fmt::format("{} were in range ({} to {}): too little was seen to tell hours of a day.",
                    of_what_was_seen(*in_range.value, review.fitness.sensed),
                    edge_words(70, review.input.unit), edge_words(180, review.input.unit));
    finding.next = {NextStep::collect_more,
                    "Whole days of readings are needed; the consensus asks for 14, with 70 % of "
                    "their readings."};
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
            const std::string edges =
                fmt::format("between {} and {}", edge_words(63, review.input.unit),
                            edge_words(140, review.input.unit));
            finding.sentence =
                tells_hours_of_a_day(time.sensed())
                    ? fmt::format("{} of the 24 hours {}, {} of the time seen. ",
                                  hours_and_minutes(hours_of_day(percent)), edges,
                                  percent_words(percent))
                    : fmt::format("{} were {}: too little was seen to tell hours of a day. ",
                                  of_what_was_seen(percent, time.sensed()), edges);
        }
        finding.sentence +=
            "In pregnancy, while planning one, or when unsure: the maternity or diabetes clinic "
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
    if (!tells_hours_of_a_day(review.fitness.sensed)) {
        say_too_little(review, *in_range, finding);
        return finding;
    }
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
