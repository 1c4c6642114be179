#include "findings/hours_of_day.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/shown_range.hpp"
#include "trace/days_for_an_interval.hpp"
#include "trace/held_levels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace tracewright {

namespace {

// Hours that fewer days than this were seen in are named (job step 6; ours, no source).
constexpr int days_for_an_hour = 5;

// "0 to 5 and 22 o'clock" of a sorted list of hours.
std::string hours_list(const std::vector<int>& hours, WayOfWriting way) {
    std::vector<std::string> runs;
    for (std::size_t i = 0; i < hours.size();) {
        std::size_t j = i;
        while (j + 1 < hours.size() && hours[j + 1] == hours[j] + 1) {
            ++j;
        }
        runs.push_back(
            fmt::format("{} to {}", full_hour(hours[i], way), full_hour(hours[j] + 1, way)));
        i = j + 1;
    }
    std::string text;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == runs.size() ? " and " : ", ") + runs[i];
    }
    return text;
}

void add_coverage(const FirstReview& review, Finding& finding) {
    const Fitness& fitness = review.fitness;
    finding.sentence = fmt::format(
        "The sensor saw {} of the time {}, over {} civil {}; {} of them with at least 70 % of "
        "their "
        "readings.",
        percent_words(fitness.active_percent()), fitness.denominator, fitness.days,
        fitness.days == 1 ? "day" : "days", fitness.valid_days);
    if (fitness.active_percent() < 70) {
        finding.caveats.push_back({CaveatKind::below_consensus_coverage,
                                   fitness.valid_days < days_for_an_interval
                                       ? "That is below the 70 % that the consensus asks for, and "
                                         "too few whole days for an interval: how far to trust the "
                                         "numbers can't be told."
                                       : "That is below the 70 % that the consensus asks for: read "
                                         "every number with its interval."});
    }
    const auto unseen = fitness.hours_seen_on_fewer_than(days_for_an_hour);
    if (unseen.size() == 24) {
        finding.caveats.push_back(
            {CaveatKind::hours_unseen, "No hour of the day was seen on 5 days or more."});
    } else if (!unseen.empty()) {
        finding.caveats.push_back(
            {CaveatKind::hours_unseen, "Seen on fewer than 5 days: " +
                                           hours_list(unseen, review.input.zones.writing()) + "."});
    }
}

void add_marks(const FirstReview& review, Finding& finding) {
    std::map<MarkReason, std::pair<int, std::chrono::seconds>> by_reason;
    for (const Mark& mark : review.marks) {
        if (mark.reason != MarkReason::warm_up) {
            auto& [times, length] = by_reason[mark.reason];
            ++times;
            length += mark.stretch.length();
        }
    }
    for (const auto& [reason, found] : by_reason) {
        finding.caveats.push_back(
            {CaveatKind::sensor_suspect,
             fmt::format("Suspect, marked and still counted: {}, {} {}, {} in all.",
                         reason == MarkReason::told ? "by a coach" : name_of(reason), found.first,
                         found.first == 1 ? "stretch" : "stretches",
                         hours_and_minutes(found.second))});
    }
}

void add_wears(const FirstReview& review, Finding& finding) {
    const auto& wears = review.input.wears;
    if (wears.size() > 1) {
        finding.caveats.push_back(
            {CaveatKind::several_wears,
             fmt::format(
                 "{} wears are joined here; each sensor reads a little differently, and the "
                 "first hour of each is marked as warm-up.",
                 wears.size())});
    }
    for (const Interval& between : review.not_worn) {
        finding.caveats.push_back(
            {CaveatKind::several_wears,
             fmt::format(
                 "From {} to {} no sensor was worn: that time is not counted as missing.",
                 day_words(review.input.zones.date_at(between.from), review.input.zones.writing()),
                 day_words(review.input.zones.date_at(between.to), review.input.zones.writing()))});
    }
    for (const CountedTrace::Choice& choice : review.trace.choices) {
        finding.caveats.push_back(
            {CaveatKind::two_sensors_at_once,
             fmt::format(
                 "Two sensors at once from {} to {}: {} is counted because {}; the other is "
                 "kept apart.",
                 day_and_time(review.input.zones.wall_time(choice.overlap.from),
                              review.input.zones.writing()),
                 day_and_time(review.input.zones.wall_time(choice.overlap.to),
                              review.input.zones.writing()),
                 wears[choice.counted].label, choice.why)});
    }
}

// What could not be read, and what more than one level was told for.
void add_not_counted(const FirstReview& review, Finding& finding) {
    if (const std::uint64_t unread = review.input.levels_not_read; unread > 0) {
        finding.caveats.push_back(
            {CaveatKind::levels_not_read,
             fmt::format("{} that {} a level could not be read: what stood there, low or high, is "
                         "not in here.",
                         unread == 1 ? "One row" : fmt::format("{} rows", unread),
                         unread == 1 ? "bears" : "bear")});
    }
    std::vector<Instant> moments;
    for (const Wear& wear : review.input.wears) {
        for (const DisputedMoment& moment : disputed_moments(wear)) {
            if (review.trace.window.contains(moment.at)) {
                moments.push_back(moment.at);
            }
        }
    }
    if (moments.empty()) {
        return;
    }
    const std::string first =
        day_and_time(review.input.zones.wall_time(*std::ranges::min_element(moments)),
                     review.input.zones.writing());
    finding.caveats.push_back(
        {CaveatKind::levels_held,
         fmt::format(
             "Levels that differ are told for {}: which is right is not known, and only what "
             "was stored earlier is counted.",
             moments.size() == 1
                 ? first
                 : fmt::format("{} moments, the first {}", moments.size(), first))});
}

// Both answers: with the days of travel and without them.
std::string travel_words(const FirstReview& review) {
    const ShownRange range = shown_range(review.input.goals);
    const auto travel = review.input.zones.travel_days(review.trace.window);
    const auto travelled = [&](const ReviewDay& day) {
        return std::find(travel.begin(), travel.end(), day.day.date) != travel.end();
    };
    TimeByRange all;
    TimeByRange without;
    for (const ReviewDay& day : review.days) {
        const TimeByRange time = time_by_range(day.view, range);
        all += time;
        if (!travelled(day)) {
            without += time;
        }
    }
    std::string days;
    for (const CivilDate date : travel) {
        days += (days.empty() ? "" : ", ") + day_words(date, review.input.zones.writing());
    }
    return fmt::format("With the {} of travel ({}): {}; without: {}.",
                       travel.size() == 1 ? "day" : "days", days, in_range_words(all),
                       in_range_words(without));
}

void add_clock(const FirstReview& review, Finding& finding) {
    const auto zones = review.input.zones.zones_in(review.trace.window);
    if (zones.size() == 1 && zones.front().is_floating()) {
        finding.caveats.push_back(
            {CaveatKind::zone_not_told,
             "No time zone was told: times stand as written, and days of a clock change count 24 "
             "hours."});
    }
    if (zones.size() > 1) {
        std::string names;
        for (const Zone& zone : zones) {
            names += (names.empty() ? "" : " and ") + zone.name();
        }
        finding.caveats.push_back(
            {CaveatKind::zones_changed, fmt::format("{} time zones are in this window ({}). {}",
                                                    zones.size(), names, travel_words(review))});
    }
}

}  // namespace

Finding trust_finding(const FirstReview& review) {
    Finding finding;
    finding.code = "trust";
    finding.question = "Can this wear be trusted?";
    finding.evidence = {review.fitness.valid_days,
                        "days with at least 70 % of readings",
                        review.fitness.days - review.fitness.valid_days,
                        "fewer readings",
                        "share of time sensed",
                        0,
                        {}};
    add_coverage(review, finding);
    add_wears(review, finding);
    add_not_counted(review, finding);
    add_marks(review, finding);
    add_clock(review, finding);
    const bool enough = std::any_of(
        review.sufficiency.begin(), review.sufficiency.end(),
        [](const Sufficiency& s) { return s.kind == Settles::mean_and_bands && s.enough; });
    finding.answer = enough ? Answer::yes : Answer::cannot_tell;
    if (!enough) {
        finding.next = {
            NextStep::collect_more,
            "A wear of 14 days with at least 70 % of readings settles average and hours "
            "in range."};
    }
    return finding;
}

}  // namespace tracewright
