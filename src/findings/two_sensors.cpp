#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/sensor_agreement.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tracewright {

namespace {

std::string apart(double mg_per_dl, GlucoseUnit unit) {
    const double shown = converted(std::abs(mg_per_dl), GlucoseUnit::mg_per_dl, unit);
    return fmt::format("{} {}", glucose_words(shown, unit), mg_per_dl < 0 ? "lower" : "higher");
}

std::string sentence_of(const SensorAgreement& agreement, const std::string& counted,
                        const std::string& other, GlucoseUnit unit) {
    std::string sentence = fmt::format("{} read {} than {} on average", other,
                                       apart(agreement.mean_difference, unit), counted);
    if (agreement.interval95) {
        sentence += fmt::format(" ({} days put it {})", agreement.days,
                                between_words(apart((*agreement.interval95)[0], unit),
                                              apart((*agreement.interval95)[1], unit)));
    }
    return sentence + fmt::format("; 95 % of {} pairs lie {}.", agreement.pairs,
                                  between_words(apart(agreement.limits[0], unit),
                                                apart(agreement.limits[1], unit)));
}

}  // namespace

std::optional<Finding> two_sensors_finding(const FirstReview& review) {
    const auto& wears = review.input.wears;
    Finding finding;
    for (const CountedTrace::Choice& choice : review.trace.choices) {
        for (const std::size_t other : choice.not_counted) {
            const auto agreement =
                sensor_agreement(cut(wears[choice.counted].view(), choice.overlap),
                                 cut(wears[other].view(), choice.overlap), review.input.zones);
            if (!agreement) {
                continue;
            }
            finding.sentence += (finding.sentence.empty() ? "" : " ") +
                                sentence_of(*agreement, wears[choice.counted].label,
                                            wears[other].label, review.input.unit);
            finding.evidence = {agreement->days,
                                "days",
                                0,
                                "",
                                "pairs in time; limits of agreement; the days' means, AR(1) grid",
                                0,
                                {}};
        }
    }
    if (finding.sentence.empty()) {
        return std::nullopt;
    }
    finding.code = "two_sensors";
    finding.question = "Do the two sensors agree?";
    finding.answer = Answer::cannot_tell;
    finding.caveats.push_back(
        {CaveatKind::two_sensors_at_once,
         "Which of the two is nearer to blood, readings alone can't tell: finger-pricks can. "
         "Counting the other one shows the review by it."});
    return finding;
}

}  // namespace tracewright
