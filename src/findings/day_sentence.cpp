#include "findings/edge_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

// A day of which less than this was seen is not described by its parts.
constexpr double share_to_describe = 0.25;

std::string lows_of(const FirstReview& review, const TraceView& view) {
    std::string text;
    for (const Episode& episode : review.episodes) {
        if (episode.kind == EpisodeKind::low && view.window().contains(episode.from)) {
            text += fmt::format("{}{} for {}", text.empty() ? " Low at " : ", ",
                                clock_time(review.input.zones.wall_time(episode.from),
                                           review.input.zones.writing()),
                                hours_and_minutes(episode.lasted));
        }
    }
    return text.empty() ? "" : text + ".";
}

}  // namespace

std::string day_sentence(const FirstReview& review, const CivilDay& day, const TraceView& view) {
    const auto seen = sensed(view);
    const auto readings = readings_within(view);
    if (readings.empty() || seen.count() == 0) {
        return "Nothing was seen on this day.";
    }
    const double share =
        static_cast<double>(seen.count()) / static_cast<double>(day.length().count());
    if (share < share_to_describe) {
        return fmt::format("Only {} of this day were seen.{}", hours_and_minutes(seen),
                           lows_of(review, view));
    }
    const TimeByRange time = time_by_range(view, shown_range(review.input.goals));
    const auto highest =
        std::max_element(readings.begin(), readings.end(), [](const Reading& a, const Reading& b) {
            const auto rank = [](const Reading& r) {
                return std::pair{r.limit() == Limit::above, r.value().in(GlucoseUnit::mg_per_dl)};
            };
            return rank(a) < rank(b);
        });
    return fmt::format(
        "{} of {} seen in range; highest {}{} at {}.{}", hours_and_minutes(time.in_range),
        hours_and_minutes(seen), highest->limit() == Limit::above ? "above " : "",
        glucose_words(highest->value().in(review.input.unit), review.input.unit),
        clock_time(review.input.zones.wall_time(highest->at), review.input.zones.writing()),
        lows_of(review, view));
}

}  // namespace tracewright
