#include "findings/edge_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

// The ladder's limits in the unit a value was reported in; from memory.
bool above_ladder(const Reading& reading) {
    const std::int32_t limit = reading.unit() == GlucoseUnit::mg_per_dl ? 30000 : 1670;
    return reading.limit() == Limit::above || reading.hundredths() > limit;
}

// Days more than half of whose sensed time was above 250 mg/dL (13.9 mmol/L).
int days_mostly_very_high(const FirstReview& review) {
    return static_cast<int>(
        std::count_if(review.days.begin(), review.days.end(), [](const ReviewDay& day) {
            return time_in_bands(day.view).share(Band::very_high).value_or(0) > 0.5;
        }));
}

// Limit first: HIGH is above every number.
bool lower(const Reading& a, const Reading& b) {
    const auto rank = [](const Reading& r) {
        return std::pair{r.limit() == Limit::above, r.value().in(GlucoseUnit::mg_per_dl)};
    };
    return rank(a) < rank(b);
}

std::string highest_words(const Reading& highest) {
    const std::string level = glucose_words(highest.value().value(), highest.unit());
    return highest.limit() == Limit::above ? "above " + level : level;
}

}  // namespace

std::optional<Finding> very_high_finding(const FirstReview& review) {
    const auto readings = readings_within(review.trace.view());
    const auto above = std::count_if(readings.begin(), readings.end(), above_ladder);
    const int mostly = days_mostly_very_high(review);
    if (above == 0 && mostly == 0) {
        return std::nullopt;
    }
    Finding finding;
    finding.code = "very_high";
    finding.question = "Was glucose very high?";
    finding.answer = Answer::yes;
    if (above > 0) {
        const auto last = std::find_if(readings.rbegin(), readings.rend(), above_ladder);
        // Told by the highest reading of that day, as the list of clients and the letter tell it.
        const ZoneHistory& zones = review.input.zones;
        const CivilDate day = zones.date_at(last->at);
        const Reading* of_day = &*last;
        for (const Reading& reading : readings) {
            if (zones.date_at(reading.at) == day && lower(*of_day, reading)) {
                of_day = &reading;
            }
        }
        for (const Reading& reading : readings) {  // the first of equals
            if (zones.date_at(reading.at) == day && !lower(reading, *of_day)) {
                of_day = &reading;
                break;
            }
        }
        const auto highest = std::max_element(readings.begin(), readings.end(), lower);
        finding.sentence = fmt::format(
            "{}, {}: above {}, highest of the day {}. Highest of all {}.",
            day_and_time(zones.wall_time(of_day->at), zones.writing()),
            age_words(of_day->at, review.input.as_of, zones), edge_words(300, review.input.unit),
            highest_words(*of_day), highest_words(*highest));
        finding.next = {NextStep::contact_prescriber,
                        "Same day: tell the client and the prescriber. Drowsy, vomiting, breathing "
                        "fast or unable to keep fluids down: emergency now. Local guidance comes "
                        "first."};
    }
    if (mostly > 0) {
        finding.sentence += fmt::format(
            "{}On {} {} most of the time seen was above {}.", finding.sentence.empty() ? "" : " ",
            mostly, mostly == 1 ? "day" : "days", edge_words(250, review.input.unit));
        if (finding.next.step == NextStep::nothing) {
            finding.next = {
                NextStep::contact_prescriber,
                "This week: tell the prescriber. With weight loss or thirst, the clinic "
                "soon. Local guidance comes first."};
        }
    }
    finding.evidence = {static_cast<int>(readings.size()),
                        "readings",
                        0,
                        "nothing is left out of this",
                        "raw trace",
                        0,
                        {}};
    return finding;
}

}  // namespace tracewright
