#include "findings/disputed_low_words.hpp"
#include "findings/edge_words.hpp"
#include "findings/finger_prick_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

struct VeryLow {
    Interval stretch;
    std::string what;
    std::string wear;  // empty for a finger-prick
};

bool below_very_low(const Glucose& glucose) {
    return band_of(Reading{{}, glucose, std::chrono::seconds{1}}) == Band::very_low;
}

std::string lowest_words(const Reading& extreme, GlucoseUnit unit) {
    return fmt::format("lowest {}{}", extreme.limit() == Limit::below ? "below " : "",
                       glucose_words(extreme.value().in(unit), unit));
}

std::string unseen_words(const Episode& cut_short) {
    const std::string lasted = hours_and_minutes(cut_short.lasted);
    if (!cut_short.start_not_seen) {
        return "end not seen: the readings stop after " + lasted;
    }
    return (cut_short.end_not_seen ? "start and end not seen: " : "start not seen: ") + lasted +
           " were seen";
}

// Of one wear, raw: also where another sensor is counted at that time (safety rule 3).
void add_very_lows_of(const FirstReview& review, const Wear& wear, std::vector<VeryLow>& found) {
    const GlucoseUnit unit = review.input.unit;
    const TraceView view = cut(wear.view(), review.trace.window);
    for (const Episode& episode : episodes_of(view)) {
        if (episode.kind == EpisodeKind::very_low) {
            found.push_back({{episode.from, episode.to},
                             fmt::format("{} below {}, {}{}", hours_and_minutes(episode.lasted),
                                         edge_words(54, unit), lowest_words(episode.extreme, unit),
                                         episode.end_not_seen ? ", end not seen" : ""),
                             wear.label});
        }
    }
    for (const Episode& episode : cut_short_very_lows(view)) {
        found.push_back({{episode.from, episode.to},
                         fmt::format("below {}, {}, {}", edge_words(54, unit),
                                     lowest_words(episode.extreme, unit), unseen_words(episode)),
                         wear.label});
    }
    for (const DisputedLow& low : disputed_very_lows(wear)) {
        if (review.trace.window.contains(low.stretch.from)) {
            found.push_back({low.stretch, disputed_low_words(low, unit), wear.label});
        }
    }
    for (const Reading& reading : readings_within(view)) {
        if (reading.implausible() && below_very_low(reading.value())) {
            found.push_back({{reading.at, reading.at + reading.interval()},
                             fmt::format("a value of {}, too low to be believed and too low to be "
                                         "passed over",
                                         glucose_words(reading.value().in(unit), unit)),
                             wear.label});
        }
    }
}

// Latest first. A stretch that two sensors saw is told once, as the sensor that saw it earlier did.
std::vector<VeryLow> very_lows(const FirstReview& review) {
    std::vector<VeryLow> all;
    for (const Wear& wear : review.input.wears) {
        if (!wear.empty()) {
            add_very_lows_of(review, wear, all);
        }
    }
    std::stable_sort(all.begin(), all.end(), [](const VeryLow& a, const VeryLow& b) {
        return a.stretch.from < b.stretch.from;
    });
    std::vector<VeryLow> found;
    for (VeryLow& low : all) {
        const bool told = std::any_of(found.begin(), found.end(), [&](const VeryLow& other) {
            return other.wear != low.wear &&
                   intersection(other.stretch, low.stretch).length().count() > 0;
        });
        if (!told) {
            found.push_back(std::move(low));
        }
    }
    for (const DiaryEntry& entry : review.input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose &&
            below_very_low(*entry.glucose)) {
            found.push_back(
                {{entry.at, entry.at}, finger_prick_words(entry, review.input.unit), {}});
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const VeryLow& a, const VeryLow& b) {
        return a.stretch.from > b.stretch.from;
    });
    return found;
}

// Which of several sensors saw it.
std::string by_which(const FirstReview& review, const VeryLow& low) {
    return review.input.wears.size() > 1 && !low.wear.empty() ? " (" + low.wear + ")" : "";
}

}  // namespace

std::optional<Finding> very_low_finding(const FirstReview& review) {
    const std::vector<VeryLow> found = very_lows(review);
    if (found.empty()) {
        return std::nullopt;
    }
    const VeryLow& latest = found.front();
    Finding finding;
    finding.code = "very_low";
    finding.question = "Was glucose very low?";
    finding.answer = Answer::yes;
    finding.sentence =
        fmt::format("{}, {}: {}{}.",
                    day_and_time(review.input.zones.wall_time(latest.stretch.from),
                                 review.input.zones.writing()),
                    age_words(latest.stretch.from, review.input.as_of, review.input.zones),
                    latest.what, by_which(review, latest));
    if (found.size() > 1) {
        finding.sentence +=
            fmt::format(" {} very low stretches or values in all, the first {}.", found.size(),
                        day_and_time(review.input.zones.wall_time(found.back().stretch.from),
                                     review.input.zones.writing()));
    }
    finding.evidence = {static_cast<int>(found.size()),
                        "very low stretches or values",
                        0,
                        "nothing is left out of this",
                        "consensus episodes, raw trace",
                        0,
                        {}};
    finding.caveats.push_back(
        {CaveatKind::medicines_not_known,
         "Medicines aren't known from files alone, so they count as able to cause lows."});
    finding.next = {
        NextStep::contact_prescriber,
        "Same day: tell the client and the prescriber, with date and time. A finger-prick "
        "when it feels low, and if it comes again, tells more. Local guidance comes "
        "first."};
    return finding;
}

}  // namespace tracewright
