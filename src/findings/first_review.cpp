#include "findings/first_review.hpp"

#include "findings/day_sheets.hpp"
#include "findings/review_findings.hpp"
#include "findings/special_days.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace tracewright {

namespace {

using std::chrono::hours;

// What a coach told is told of all wears: where two are worn at once it is one stretch. `marks` are
// in order of time.
void join_what_was_told(std::vector<Mark>& marks) {
    std::vector<Mark> joined;
    std::optional<std::size_t> last;  // of those told
    for (Mark& mark : marks) {
        const bool told = mark.reason == MarkReason::told;
        if (told && last && mark.stretch.from <= joined[*last].stretch.to) {
            joined[*last].stretch.to = std::max(joined[*last].stretch.to, mark.stretch.to);
            continue;
        }
        last = told ? joined.size() : last;
        joined.push_back(std::move(mark));
    }
    marks = std::move(joined);
}

void join_wears(FirstReview& review) {
    review.trace = counted_trace(review.input.wears, review.input.prefer_wear);
    if (review.input.window) {
        review.trace.window = *review.input.window;
    }
    for (const Wear& wear : review.input.wears) {
        const auto marks = suspect_stretches(wear, review.input.suspect);
        std::copy_if(
            marks.begin(), marks.end(), std::back_inserter(review.marks), [&](const Mark& mark) {
                return intersection(mark.stretch, review.trace.window).length().count() > 0;
            });
    }
    std::stable_sort(review.marks.begin(), review.marks.end(),
                     [](const Mark& a, const Mark& b) { return a.stretch.from < b.stretch.from; });
    join_what_was_told(review.marks);
}

// A day or longer between the last reading of one wear and the first of the next: no sensor was
// worn, and nothing is missing. Shorter is a gap (a sensor that fell off is replaced within a day;
// ours, no source). A window that was asked for counts whole.
void find_what_was_not_worn(FirstReview& review) {
    constexpr hours a_day{24};
    const auto& trace = review.trace;
    for (std::size_t i = 1; i < trace.readings.size() && !review.input.window; ++i) {
        const Interval between{trace.readings[i - 1].at + trace.readings[i - 1].interval(),
                               trace.readings[i].at};
        if (trace.wear_of[i] != trace.wear_of[i - 1] && between.length() >= a_day) {
            review.not_worn.push_back(between);
        }
    }
}

void find_episodes(FirstReview& review) {
    const TraceView view = cut(review.trace.view(), review.trace.window);
    review.episodes = episodes_of(view);
    review.cut_short = cut_short_very_lows(view);
}

void measure(FirstReview& review) {
    const TraceView view = cut(review.trace.view(), review.trace.window);
    const ZoneHistory& zones = review.input.zones;
    const MeasureOptions options{review.input.unit, true, review.input.seed};
    review.fitness = fitness_of(view, zones,
                                review.input.window       ? "of the window asked for"
                                : review.not_worn.empty() ? "from the first to the last reading"
                                                          : "in which a sensor was worn",
                                review.not_worn);
    review.sufficiency = sufficiency_of(review.fitness, review.input.unit);
    if (shown_range(review.input.goals).in_pregnancy()) {  // none by the ranges of other people
        std::erase_if(review.sufficiency,
                      [](const Sufficiency& one) { return one.kind == Settles::tight_range; });
    }
    review.measures = measures_of(view, zones, options);
    const WayOfWriting way = zones.writing();
    review.parts = {
        {fmt::format("night, {} to {}", full_hour(0, way), full_hour(6, way)),
         measures_in_clock_window(view, zones, hours{0}, hours{6}, options)},
        {fmt::format("waking day, {} to {}", full_hour(6, way), full_hour(24, way)),
         measures_in_clock_window(view, zones, hours{6}, hours{24}, options)},
        {"Monday to Friday", measures_on(view, zones, DayKind::weekday, options)},
        {"Saturday and Sunday", measures_on(view, zones, DayKind::weekend, options)},
    };
    if (review.input.wears.size() > 1) {
        for (const Wear& wear : review.input.wears) {
            review.parts.emplace_back(wear.label, measures_of(wear.view(), zones, options));
        }
    }
    review.usual_day = usual_day(view, zones, review.input.unit);
}

void describe_days(FirstReview& review) {
    for (const CivilDay& day : days_of(review.trace.view(), review.input.zones, review.not_worn)) {
        review.days.push_back({day, cut(review.trace.view(), day.interval()), {}});
    }
    for (ReviewDay& day : review.days) {
        day.sentence = day_sentence(review, day.day, day.view);
    }
}

void find_what_is_to_say(FirstReview& review) {
    for (auto& urgent : {very_low_finding(review), very_high_finding(review)}) {
        if (urgent) {
            review.findings.push_back(*urgent);
        }
    }
    for (auto* finding : {trust_finding, lows_finding, hours_in_range_finding, average_finding,
                          spread_finding, when_high_finding}) {
        review.findings.push_back(finding(review));
        if (finding == trust_finding) {
            if (auto two = two_sensors_finding(review)) {
                review.findings.push_back(std::move(*two));
            }
        }
    }
    if (auto days = special_days_finding(review)) {
        review.findings.push_back(std::move(*days));
    }
    if (auto day = single_day_finding(review)) {
        review.findings.push_back(std::move(*day));
    }
    review.goes_with = what_goes_with_it(review.input);
    for (const Finding& leading : review.goes_with.leading) {
        review.findings.push_back(leading);
    }
}

}  // namespace

FirstReview first_review(ReviewInput input) {
    FirstReview review;
    review.input = std::move(input);
    review.cautions = cautions();
    join_wears(review);
    find_what_was_not_worn(review);
    measure(review);
    find_episodes(review);
    describe_days(review);
    find_what_is_to_say(review);
    review.cannot_say = what_cannot_be_said(review);
    review.last_reading = last_reading_sentence(review);
    set_closing(review);
    return review;
}

FirstReview day_sheets_of(ReviewInput input) {
    FirstReview review;
    review.input = std::move(input);
    join_wears(review);
    find_what_was_not_worn(review);
    find_episodes(review);
    describe_days(review);
    return review;
}

}  // namespace tracewright
