#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "inference/grubbs.hpp"
#include "measures/day_sums.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tracewright {

namespace {

constexpr std::size_t fewest_days = 7;

}  // namespace

std::optional<Finding> single_day_finding(const FirstReview& review) {
    const GlucoseUnit unit = review.input.unit;
    const TraceView view = cut(review.trace.view(), review.trace.window);
    std::vector<std::pair<CivilDate, double>> days;
    double sum = 0;
    for (const DayOfTrace& day : days_of_trace(view, review.input.zones)) {
        if (day.valid) {
            days.emplace_back(day.date, day.sums.mean(unit));
            sum += days.back().second;
        }
    }
    if (days.size() < fewest_days) {
        return std::nullopt;
    }
    const auto n = static_cast<double>(days.size());
    const double mean = sum / n;
    double squares = 0;
    const auto* farthest = &days.front();
    for (const auto& day : days) {
        squares += (day.second - mean) * (day.second - mean);
        farthest =
            std::abs(day.second - mean) > std::abs(farthest->second - mean) ? &day : farthest;
    }
    const double deviation = std::sqrt(squares / (n - 1));
    if (!(deviation > 0) || std::abs(farthest->second - mean) / deviation <= grubbs_limit(n)) {
        return std::nullopt;
    }
    Finding finding;
    finding.code = "single_day";
    finding.question = "Does one day stand apart?";
    finding.answer = Answer::yes;
    finding.sentence = fmt::format(
        "{} does: its average was {}, that of the other days {}. Chance alone would set a day so "
        "far apart in fewer than 1 of 20 such spans.",
        day_words(farthest->first, review.input.zones.writing()),
        glucose_words(farthest->second, unit),
        glucose_words((sum - farthest->second) / (n - 1), unit));
    finding.evidence.used = static_cast<int>(days.size());
    finding.evidence.used_what = "days";
    finding.evidence.method =
        "largest deviation of a day's mean against its limit (Grubbs 1969), 5 %";
    finding.next = {NextStep::ask_client,
                    fmt::format("Ask what {} was like.",
                                day_words(farthest->first, review.input.zones.writing()))};
    return finding;
}

}  // namespace tracewright
