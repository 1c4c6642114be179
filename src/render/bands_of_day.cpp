#include "render/bands_of_day.hpp"

#include "findings/edge_words.hpp"
#include "measures/shown_range.hpp"

namespace tracewright {

namespace {

std::string number(int edge, GlucoseUnit unit) {
    const std::string words = edge_words(edge, unit);
    return words.substr(0, words.find(' '));
}

// Sensed time in the bands of pregnancy, which no measure tells.
std::vector<BandOfDay> bands_in_pregnancy(const FirstReview& review, const ShownRange& range) {
    const GlucoseUnit unit = review.input.unit;
    const TimeByRange time = time_by_range(cut(review.trace.view(), review.trace.window), range);
    const auto percent = [&](std::chrono::seconds part) {
        return time.sensed().count() > 0 ? 100 * static_cast<double>(part.count()) /
                                               static_cast<double>(time.sensed().count())
                                         : 0;
    };
    return {
        {Fill::very_low, "very low", "below " + edge_words(54, unit), percent(time.very_low)},
        {Fill::low, "low", number(54, unit) + " to below " + edge_words(range.low, unit),
         percent(time.low)},
        {Fill::in_range, "between", number(range.low, unit) + " to " + edge_words(range.high, unit),
         percent(time.in_range)},
        {Fill::high, "above", "above " + edge_words(range.high, unit), percent(time.high)}};
}

}  // namespace

std::vector<BandOfDay> bands_of_day(const FirstReview& review) {
    const GlucoseUnit unit = review.input.unit;
    if (const ShownRange range = shown_range(review.input.goals); range.in_pregnancy()) {
        return bands_in_pregnancy(review, range);
    }
    const auto percent = [&](const char* name) {
        const Measure* measure = find(review.measures, name);
        return measure != nullptr ? measure->value.value_or(0) : 0;
    };
    return {
        {Fill::very_low, "very low", "below " + edge_words(54, unit), percent("very_low")},
        {Fill::low, "low", number(54, unit) + " to below " + edge_words(70, unit), percent("low")},
        {Fill::in_range, "in range", number(70, unit) + " to " + edge_words(180, unit),
         percent("in_range")},
        {Fill::high, "high", "above " + number(180, unit) + " to " + edge_words(250, unit),
         percent("high")},
        {Fill::very_high, "very high", "above " + edge_words(250, unit), percent("very_high")}};
}

}  // namespace tracewright
