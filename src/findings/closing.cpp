#include "findings/edge_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

using std::chrono::seconds;

TimeByRange time_on(const FirstReview& review, const ReviewDay& day) {
    return time_by_range(day.view, shown_range(review.input.goals));
}

std::string seen(const FirstReview& review) {
    const Measure* in_range = find(review.measures, "in_range");
    if (in_range == nullptr || !in_range->value) {
        return "No reading was seen.";
    }
    const ReviewDay* best = day_with_most_in_range(review);
    const seconds most = time_on(review, *best).in_range;
    return most.count() == 0 ? "No day had time in range."
                             : fmt::format("{} had {} in range{}.",
                                           day_words(best->day.date, review.input.zones.writing()),
                                           hours_and_minutes(most),
                                           review.days.size() > 1 ? ", the most of any day" : "");
}

std::string to_ask(const FirstReview& review) {
    for (const Finding& finding : review.findings) {
        if (finding.code == "very_low") {
            return "What was felt, eaten and taken before the very low stretch, and what was done?";
        }
    }
    const auto worst = std::max_element(
        review.days.begin(), review.days.end(), [&](const ReviewDay& a, const ReviewDay& b) {
            return time_on(review, a).above() < time_on(review, b).above();
        });
    if (worst == review.days.end() || time_on(review, *worst).above().count() == 0) {
        return "What did these days have in common?";
    }
    return fmt::format("What was {} like? {} were above {}{}.",
                       day_words(worst->day.date, review.input.zones.writing()),
                       hours_and_minutes(time_on(review, *worst).above()),
                       edge_words(shown_range(review.input.goals).high, review.input.unit),
                       review.days.size() > 1 ? ", more than on any other day" : "");
}

std::string to_note(const FirstReview& review) {
    const auto written = [&](DiaryKind kind) {
        return std::any_of(review.input.diary.begin(), review.input.diary.end(),
                           [&](const DiaryEntry& entry) { return entry.kind == kind; });
    };
    if (!written(DiaryKind::meal)) {
        return "Write down the first bite of each meal, with its time and about how much.";
    }
    if (!written(DiaryKind::sleep)) {
        return "Write down when the light went out and when the day began.";
    }
    if (!written(DiaryKind::movement)) {
        return "Write down walks and other movement, with start and length.";
    }
    return "Note on which evenings dinner was late, and how the night was.";
}

}  // namespace

const ReviewDay* day_with_most_in_range(const FirstReview& review) {
    const auto best = std::max_element(
        review.days.begin(), review.days.end(), [&](const ReviewDay& a, const ReviewDay& b) {
            return time_on(review, a).in_range < time_on(review, b).in_range;
        });
    return best == review.days.end() ? nullptr : &*best;
}

void set_closing(FirstReview& review) {
    review.one_thing_seen = seen(review);
    review.one_thing_to_ask = to_ask(review);
    review.one_thing_to_note = to_note(review);
}

}  // namespace tracewright
