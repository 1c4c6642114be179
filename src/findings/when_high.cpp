#include "findings/edge_words.hpp"
#include "findings/hours_of_day.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "inference/ar1_grid.hpp"
#include "measures/shown_range.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tracewright {

namespace {

using std::chrono::hours;
using std::chrono::seconds;

// The order in which a usual day is read; the hours are ours, no source.
struct PartOfDay {
    const char* name;
    hours begin, end;
};
constexpr std::array<PartOfDay, 4> parts{{{"at night", hours{0}, hours{6}},
                                          {"in the morning", hours{6}, hours{11}},
                                          {"around midday", hours{11}, hours{17}},
                                          {"in the evening", hours{17}, hours{24}}}};
constexpr double valid_share = 0.70;
constexpr std::size_t fewest_days = 5;
constexpr double hardly_percent = 1;

struct PartShare {
    double in_part = 0;
    double elsewhere = 0;
    seconds high_in_part{0};
    bool seen = false;
};

double share(seconds part, seconds whole) {
    return static_cast<double>(part.count()) / static_cast<double>(whole.count());
}

PartShare share_of(const FirstReview& review, const ReviewDay& day, const PartOfDay& part) {
    const Interval window = review.input.zones.clock_window(day.day, part.begin, part.end);
    const ShownRange range = shown_range(review.input.goals);
    const TimeByRange inside = time_by_range(cut(day.view, window), range);
    const TimeByRange whole = time_by_range(day.view, range);
    const seconds elsewhere = whole.sensed() - inside.sensed();
    PartShare result;
    result.seen = window.length().count() > 0 && elsewhere.count() > 0 &&
                  share(inside.sensed(), window.length()) >= valid_share &&
                  share(whole.sensed(), day.day.length()) >= valid_share;
    if (result.seen) {
        result.high_in_part = inside.above();
        result.in_part = share(result.high_in_part, inside.sensed());
        result.elsewhere = share(whole.above() - result.high_in_part, elsewhere);
    }
    return result;
}

struct Candidate {
    const PartOfDay* part = nullptr;
    double probability = 0;  // that the part is higher than the rest of the day
    double difference = 0;
    double percent_in_part = 0;
    int days = 0;
};

Candidate judged(const FirstReview& review, const PartOfDay& part) {
    std::vector<double> differences;
    std::vector<SeriesStep> steps;
    double in_part = 0;
    int gap = 1;
    for (const ReviewDay& day : review.days) {
        const PartShare found = share_of(review, day, part);
        if (found.seen) {
            steps.push_back({differences.empty(), gap});
            differences.push_back(found.in_part - found.elsewhere);
            in_part += found.in_part;
            gap = 0;
        }
        ++gap;
    }
    Candidate candidate{&part, 0, 0, 0, static_cast<int>(differences.size())};
    if (differences.size() < fewest_days) {
        return candidate;
    }
    const TMixture mean = ar1_mean(differences, steps);
    candidate.probability = mean.probability_above(0);
    candidate.difference = mean.mean();
    candidate.percent_in_part = 100 * in_part / candidate.days;
    return candidate;
}

std::string part_words(const PartOfDay& part, WayOfWriting way) {
    return fmt::format("{} ({} to {})", part.name,
                       full_hour(static_cast<int>(part.begin.count()), way),
                       full_hour(static_cast<int>(part.end.count()), way));
}

}  // namespace

Finding when_high_finding(const FirstReview& review) {
    Finding finding;
    finding.code = "when_high";
    finding.question = "When in the day does glucose leave the range upwards?";
    const ShownRange range = shown_range(review.input.goals);
    const TimeByRange time = time_by_range(cut(review.trace.view(), review.trace.window), range);
    const double percent = time.sensed().count() > 0 ? 100 * share(time.above(), time.sensed()) : 0;
    const std::string edge = edge_words(range.high, review.input.unit);
    if (review.trace.readings.empty()) {
        finding.sentence = "When in the day can't be told: there is no reading.";
        return finding;
    }
    if (!tells_hours_of_a_day(time.sensed())) {
        finding.sentence = fmt::format(
            "Above {} for {} of the {} seen: too little was seen to tell when in the day.", edge,
            hours_and_minutes(time.above()), hours_and_minutes(time.sensed()));
        finding.next = {NextStep::collect_more,
                        "A week of whole days lets parts of the day be compared."};
        return finding;
    }
    Candidate best;
    for (const PartOfDay& part : parts) {
        const Candidate candidate = judged(review, part);
        if (best.part == nullptr || candidate.probability > best.probability) {
            best = candidate;
        }
    }
    finding.evidence = {best.days,
                        "days",
                        review.fitness.days - best.days,
                        "less than 70 % of the day or of its part seen",
                        "part of the day against the rest of the same day, AR(1) grid, four parts "
                        "looked at together",
                        review.input.seed,
                        {}};
    const auto a_day = hours_and_minutes(seconds{std::lround(percent / 100 * 86400)});
    // Four parts are looked at: each must stand out four times as clearly (Bonferroni).
    const double needed = 1 - 0.025 / static_cast<double>(parts.size());
    if (percent < hardly_percent) {
        finding.answer = Answer::no_difference_worth_acting_on;
        finding.sentence =
            percent > 0 ? fmt::format("Above {} for {} a day of the time seen: hardly at any time.",
                                      edge, a_day)
                        : fmt::format("Never above {} in the time seen.", edge);
    } else if (best.days < static_cast<int>(fewest_days)) {
        finding.sentence = fmt::format(
            "Above {} for {} a day of the time seen; with fewer than {} whole days it can't be "
            "told "
            "when.",
            edge, a_day, fewest_days);
        finding.next = {NextStep::collect_more,
                        "A week of whole days lets parts of the day be compared."};
    } else if (best.probability >= needed) {
        finding.answer = Answer::yes;
        finding.sentence = fmt::format(
            "Above {} for {} a day of the time seen, mostly {}: {} of that part of the day, more "
            "than of "
            "the rest of the same days by more than chance allows.",
            edge, a_day, part_words(*best.part, review.input.zones.writing()),
            percent_words(best.percent_in_part));
        finding.next = {
            NextStep::ask_client,
            "Ask what is eaten, done and felt at that time of day before looking further."};
    } else {
        finding.sentence = fmt::format(
            "Above {} for {} a day of the time seen; no part of the day stands out by more than "
            "chance.",
            edge, a_day);
        finding.next = {NextStep::collect_more, "More days may part the times of day."};
    }
    return finding;
}

}  // namespace tracewright
