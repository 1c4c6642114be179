#include "findings/edge_words.hpp"
#include "findings/hours_of_day.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"
#include "trace/left_out.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr seconds night_begins{0};
constexpr seconds night_ends = std::chrono::hours{6};
constexpr seconds a_week = std::chrono::days{7};

std::vector<Episode> low_episodes(const FirstReview& review) {
    std::vector<Episode> lows;
    std::copy_if(review.episodes.begin(), review.episodes.end(), std::back_inserter(lows),
                 [](const Episode& episode) { return episode.kind == EpisodeKind::low; });
    return lows;
}

bool touches(const Episode& episode, const Mark& mark) {
    return intersection({episode.from, episode.to}, mark.stretch).length().count() > 0;
}

// Of a low that reaches into a suspect stretch, what lies outside may be one all the same.
int lows_without_suspect(const FirstReview& review) {
    std::vector<Wear> wears = review.input.wears;
    for (Wear& wear : wears) {
        std::vector<Interval> marked;
        for (const Mark& mark : suspect_stretches(wear, review.input.suspect)) {
            marked.push_back(mark.stretch);
        }
        wear = without_stretches(std::move(wear), marked);
    }
    std::optional<std::size_t> prefer = review.input.prefer_wear;
    if (std::erase_if(wears, [](const Wear& wear) { return wear.empty(); }) > 0) {
        prefer.reset();  // it names a wear by its place among all
    }
    if (wears.empty()) {
        return 0;
    }
    const CountedTrace trace = counted_trace(wears, prefer);
    return static_cast<int>(std::ranges::count(episodes_of(cut(trace.view(), review.trace.window)),
                                               EpisodeKind::low, &Episode::kind));
}

struct NightSeen {
    seconds seen{0};
    seconds unseen{0};
};

NightSeen nights_of(const FirstReview& review) {
    NightSeen nights;
    for (const ReviewDay& day : review.days) {
        const Interval night =
            intersection(review.input.zones.clock_window(day.day, night_begins, night_ends),
                         review.trace.window);
        const seconds seen = sensed(cut(review.trace.view(), night));
        nights.seen += seen;
        nights.unseen += night.length() - seen;
    }
    return nights;
}

bool at_night(const FirstReview& review, const Episode& episode) {
    const WallTime wall = review.input.zones.wall_time(episode.from);
    return wall - std::chrono::floor<std::chrono::days>(wall) < night_ends;
}

// Whole hours, as one says them; what is shorter than one in minutes.
std::string hours_seen(seconds time) {
    if (time < std::chrono::minutes{1}) {
        return "under 1 min";
    }
    return time < std::chrono::hours{1}
               ? hours_and_minutes(time)
               : fmt::format("{} h", std::chrono::round<std::chrono::hours>(time).count());
}

// ", 56 h of them at night; 28 h of night were not seen". Of less than a day no night is said to
// have been seen whole.
std::string nights_seen(const FirstReview& review) {
    const NightSeen nights = nights_of(review);
    std::string text =
        fmt::format(", {} of them at night",
                    nights.seen.count() == 0 ? std::string("none") : hours_seen(nights.seen));
    if (nights.unseen.count() > 0) {
        text += "; " + hours_seen(nights.unseen) +
                (nights.unseen < std::chrono::minutes{90} ? " of night was not seen"
                                                          : " of night were not seen");
    } else if (tells_hours_of_a_day(review.fitness.sensed)) {
        text += "; no hour of night was missed";
    }
    return text;
}

// What was low and makes no episode: too short, too low to be believed, or seen by something else.
struct LowAllTheSame {
    seconds shorter{0};
    bool not_believed = false;

    bool any() const { return shorter.count() > 0 || not_believed; }
};

LowAllTheSame low_all_the_same(const FirstReview& review) {
    const TraceView view = cut(review.trace.view(), review.trace.window);
    const TimeInBands bands = time_in_bands(view);
    LowAllTheSame low{bands.in(Band::very_low) + bands.in(Band::low), false};
    for (const Reading& reading : readings_within(view)) {
        const Reading believed{reading.at, reading.value(), reading.interval()};
        low.not_believed =
            low.not_believed || (reading.implausible() && band_of(believed) <= Band::low);
    }
    return low;
}

std::string told_beside(const FirstReview& review, const LowAllTheSame& low) {
    std::string text;
    if (low.shorter.count() > 0) {
        text = fmt::format(" Shorter stretches below {}: {} in all.",
                           edge_words(70, review.input.unit), hours_and_minutes(low.shorter));
    }
    if (low.not_believed) {
        text += " What was too low to be believed is told first and counts in no time.";
    }
    if (!low.any() && very_low_finding(review)) {
        text = " The very low value told first was not seen by the sensor counted here.";
    }
    return text;
}

void say_nothing_seen(const FirstReview& review, Finding& finding) {
    const LowAllTheSame low = low_all_the_same(review);
    finding.answer = Answer::cannot_tell;
    if (review.fitness.sensed.count() == 0) {
        finding.sentence = "Lows can't be told: the sensor saw nothing.";
        return;
    }
    finding.sentence = fmt::format(
        "{} in the {} that the sensor saw{}.{} {} can't rule out {}lows.",
        low.any() ? "No low was seen to last 15 minutes" : "No low was recorded",
        hours_seen(review.fitness.sensed), nights_seen(review), told_beside(review, low),
        tells_hours_of_a_day(review.fitness.sensed)
            ? fmt::format("{} {}", review.fitness.days, review.fitness.days == 1 ? "day" : "days")
            : "So short a time",
        tells_hours_of_a_day(review.fitness.sensed) ? "rare " : "");
    finding.next = {NextStep::nothing, ""};
}

bool two_within_a_week(const std::vector<Episode>& lows) {
    return std::adjacent_find(lows.begin(), lows.end(), [](const Episode& a, const Episode& b) {
               return b.from - a.from <= a_week;
           }) != lows.end();
}

void say_seen(const FirstReview& review, const std::vector<Episode>& lows, Finding& finding) {
    std::set<CivilDate> days;
    int nights = 0;
    bool suspect = false;
    int marked_by_coach = 0;
    int single = 0;
    int unended = 0;
    for (const Episode& low : lows) {
        days.insert(review.input.zones.date_at(low.from));
        nights += at_night(review, low) ? 1 : 0;
        single += low.single_reading ? 1 : 0;
        unended += low.end_not_seen ? 1 : 0;
        const auto touched_by = [&](bool told) {
            return std::ranges::any_of(review.marks, [&](const Mark& mark) {
                return (mark.reason == MarkReason::told) == told && touches(low, mark);
            });
        };
        marked_by_coach += touched_by(true) ? 1 : 0;
        suspect = suspect || touched_by(true) || touched_by(false);
    }
    const auto lowest =
        std::min_element(lows.begin(), lows.end(), [](const Episode& a, const Episode& b) {
            const auto rank = [](const Reading& r) {
                return std::pair{r.limit() != Limit::below, r.value().in(GlucoseUnit::mg_per_dl)};
            };
            return rank(a.extreme) < rank(b.extreme);
        });
    const int all = static_cast<int>(lows.size());
    finding.answer = Answer::yes;
    const std::string nightly = all > 1       ? fmt::format(", {} of them at night", nights)
                                : nights == 1 ? ", at night"
                                              : ", by day";
    finding.sentence = fmt::format(
        "{} low {} (below {}) on {} of {} days{}; lowest {}{} on {}.", all,
        all == 1 ? "stretch" : "stretches", edge_words(70, review.input.unit), days.size(),
        review.fitness.days, nightly, lowest->extreme.limit() == Limit::below ? "below " : "",
        glucose_words(lowest->extreme.value().in(review.input.unit), review.input.unit),
        day_and_time(review.input.zones.wall_time(lowest->extreme.at),
                     review.input.zones.writing()));
    if (suspect) {
        finding.sentence +=
            fmt::format(" Without the suspect stretches: {}.", lows_without_suspect(review));
        // Whoever reads it must know whose judgement that is.
        if (marked_by_coach > 0) {
            finding.sentence += fmt::format(
                " What the coach marked touches {} of these low stretches.", marked_by_coach);
        }
    }
    if (unended > 0) {
        finding.caveats.push_back(
            {CaveatKind::end_not_seen, unended == 1
                                           ? "The end of one was not seen."
                                           : fmt::format("The end of {} was not seen.", unended)});
    }
    if (single > 0) {
        finding.caveats.push_back({CaveatKind::single_readings,
                                   single == 1
                                       ? "One rests on a single reading."
                                       : fmt::format("{} rest on a single reading.", single)});
    }
    if (two_within_a_week(lows)) {
        finding.caveats.push_back(
            {CaveatKind::medicines_not_known,
             "Medicines aren't known from files alone, so they count as able to cause lows."});
        finding.next = {
            NextStep::contact_prescriber,
            "Two or more lows within 7 days: same day, client and prescriber, unless the "
            "prescriber has said that none of the medicines can cause them. Local "
            "guidance comes first."};
    } else {
        finding.next = {NextStep::ask_client,
                        "Ask what was felt and done then, and which medicines are taken."};
    }
}

}  // namespace

Finding lows_finding(const FirstReview& review) {
    const std::vector<Episode> lows = low_episodes(review);
    Finding finding;
    finding.code = "lows";
    finding.question = "Were there lows?";
    finding.evidence = {review.fitness.days,
                        "days",
                        0,
                        "nothing is left out of this",
                        "consensus episodes of 2023, raw trace",
                        0,
                        {}};
    if (lows.empty()) {
        say_nothing_seen(review, finding);
    } else {
        say_seen(review, lows, finding);
    }
    for (const Sufficiency& answer : review.sufficiency) {
        if (answer.kind == Settles::lows && !answer.enough) {
            finding.caveats.push_back({CaveatKind::few_days, answer.sentence});
        }
    }
    return finding;
}

}  // namespace tracewright
