#include "findings/last_reading.hpp"

#include "findings/review_findings.hpp"
#include "findings/since_words.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

namespace tracewright {

std::string review_title(const FirstReview& review) {
    if (review.days.empty() || review.trace.readings.empty()) {
        return review.input.of_whom.empty() ? "First review: no readings"
                                            : "Review of " + review.input.of_whom + ": no readings";
    }
    // Not the window's end: a last reading before midnight stands into a day not reviewed.
    const std::string of = review.input.of_whom.empty() ? std::string("First review")
                                                        : "Review of " + review.input.of_whom;
    return of + ", " +
           date_range(review.days.front().day.date, review.days.back().day.date,
                      review.input.zones.writing());
}

std::string last_reading_sentence(std::optional<Instant> last, Instant as_of,
                                  const ZoneHistory& clock) {
    if (!last) {
        return "There is no reading: nothing can be said.";
    }
    const std::string when = day_and_time(clock.wall_time(*last), clock.writing());
    if (*last > as_of) {
        return fmt::format(
            "The last reading was {}, after the time this was made: check the clocks.", when);
    }
    return fmt::format("The last reading was {}, {}. {}", when, age_words(*last, as_of, clock),
                       since_words(as_of - *last));
}

std::string last_reading_sentence(const FirstReview& review) {
    const auto& readings = review.trace.readings;
    return last_reading_sentence(
        readings.empty() ? std::nullopt : std::optional(readings.back().at), review.input.as_of,
        review.input.zones);
}

}  // namespace tracewright
