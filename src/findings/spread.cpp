#include "findings/hours_of_day.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

// Battelino et al. 2019, 10.2337/dci19-0028, prints 36 % or less as stable; the figure came from
// within-day spread over few days (Monnier et al. 2017, 10.2337/dc16-1769), so pooled days lie
// higher.
constexpr double stable_up_to = 36;

}  // namespace

Finding spread_finding(const FirstReview& review) {
    Finding finding;
    finding.code = "spread";
    finding.question = "Does glucose vary much?";
    const Measure* cv = find(review.measures, "cv");
    if (cv == nullptr || !cv->value) {
        finding.sentence = "How much glucose varies can't be given: " +
                           (cv == nullptr ? "no readings" : cv->absent_because) + ".";
        return finding;
    }
    finding.estimate = Estimate{*cv->value, cv->unit, cv->interval95, ""};
    finding.evidence = {cv->days,
                        "days",
                        review.fitness.days - cv->days,
                        "less than 70 % of the day seen",
                        "bootstrap of days",
                        review.input.seed,
                        {}};
    finding.sentence =
        fmt::format("Glucose varied by {} of its average (coefficient of variation, CV",
                    percent_words(*cv->value));
    if (cv->interval95) {
        finding.sentence += ", " + between_words(percent_words((*cv->interval95)[0]),
                                                 percent_words((*cv->interval95)[1]));
        finding.answer = (*cv->interval95)[0] > stable_up_to ? Answer::yes
                         : (*cv->interval95)[1] <= stable_up_to
                             ? Answer::no_difference_worth_acting_on
                             : Answer::cannot_tell;
    }
    // What is called steady is so over days: an hour is steady in anybody.
    const bool little = !tells_hours_of_a_day(review.fitness.sensed);
    finding.sentence += little ? fmt::format("); {} seen are too little to call it steady or not.",
                                             hours_and_minutes(review.fitness.sensed))
                               : std::string("); up to 36 % is usually called steady.");
    if (*cv->value > stable_up_to && !little) {
        finding.next = {
            NextStep::contact_prescriber,
            "If no insulin, sulfonylurea or glinide is taken, this does not fit the usual "
            "course. Ask the clinic whether the type has been checked."};
    }
    for (const Sufficiency& answer : review.sufficiency) {
        if (answer.kind == Settles::spread && !answer.enough) {
            finding.caveats.push_back({CaveatKind::few_days, answer.sentence});
        }
    }
    return finding;
}

}  // namespace tracewright
