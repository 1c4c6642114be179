#include "findings/days_in_turn.hpp"
#include "findings/hours_of_day.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <utility>

namespace tracewright {

Finding average_finding(const FirstReview& review) {
    Finding finding;
    finding.code = "average";
    finding.question = "Where does glucose sit?";
    const Measure* mean = find(review.measures, "mean");
    const Measure* gmi = find(review.measures, "gmi");
    if (mean == nullptr || !mean->value) {
        finding.sentence = "An average can't be given: " +
                           (mean == nullptr ? "no readings" : mean->absent_because) + ".";
        return finding;
    }
    const GlucoseUnit unit = review.input.unit;
    finding.answer = mean->interval95 ? Answer::yes : Answer::cannot_tell;
    finding.estimate = Estimate{*mean->value, mean->unit, mean->interval95, ""};
    finding.evidence = {mean->days,
                        "days",
                        review.fitness.days - mean->days,
                        "less than 70 % of the day seen",
                        "daily means, AR(1) grid",
                        review.input.seed,
                        {}};
    finding.sentence = "Average " + glucose_words(*mean->value, unit);
    if (mean->interval95) {
        finding.sentence +=
            fmt::format(" ({})", between_words(glucose_words((*mean->interval95)[0], unit),
                                               glucose_words((*mean->interval95)[1], unit)));
    }
    const bool little = !tells_hours_of_a_day(review.fitness.sensed);
    finding.sentence += little ? fmt::format(" over the {} seen: too little for a usual average.",
                                             hours_and_minutes(review.fitness.sensed))
                               : std::string(".");
    if (gmi != nullptr && gmi->value && !little) {
        // Perlman et al. 2021, 10.1089/dia.2020.0501: of 641 visits half differed by 0.5 or more.
        finding.sentence += fmt::format(
            " The glucose management indicator (GMI) is {:.1f} %: a label for this average, not a "
            "laboratory A1c. Half of people differ from it by 0.5 points or more.",
            *gmi->value);
    }
    if (auto turn = days_in_turn(review.trace, review.input.zones, unit)) {
        finding.caveats.push_back(std::move(*turn));
    }
    if (mean->censored_share > 0) {
        finding.caveats.push_back(
            {CaveatKind::censored,
             fmt::format(
                 "Of the time seen {} was LOW or HIGH, beyond the sensor's limit; it counts "
                 "at the limit.",
                 percent_words(100 * mean->censored_share))});
    }
    return finding;
}

}  // namespace tracewright
