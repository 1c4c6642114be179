#include "findings/edge_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "measures/time_in_bands.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

struct VeryLow {
    Instant at;
    std::string what;
};

bool below_very_low(const Glucose& glucose) {
    return band_of(Reading{{}, glucose, std::chrono::seconds{1}}) == Band::very_low;
}

std::string lowest_words(const Reading& extreme) {
    return extreme.limit() == Limit::below
               ? "lowest below " + glucose_words(extreme.value().value(), extreme.unit())
               : "lowest " + glucose_words(extreme.value().value(), extreme.unit());
}

std::string unseen_words(const Episode& cut_short) {
    const std::string lasted = hours_and_minutes(cut_short.lasted);
    if (!cut_short.start_not_seen) {
        return "end not seen: the readings stop after " + lasted;
    }
    return (cut_short.end_not_seen ? "start and end not seen: " : "start not seen: ") + lasted +
           " were seen";
}

std::vector<VeryLow> very_lows(const FirstReview& review) {
    std::vector<VeryLow> found;
    for (const Episode& episode : review.episodes) {
        if (episode.kind == EpisodeKind::very_low) {
            found.push_back(
                {episode.from,
                 fmt::format("{} below {}, {}{}", hours_and_minutes(episode.lasted),
                             edge_words(54, review.input.unit), lowest_words(episode.extreme),
                             episode.end_not_seen ? ", end not seen" : "")});
        }
    }
    for (const Episode& episode : review.cut_short) {
        found.push_back(
            {episode.from, fmt::format("below {}, {}, {}", edge_words(54, review.input.unit),
                                       lowest_words(episode.extreme), unseen_words(episode))});
    }
    for (const Reading& reading : readings_within(review.trace.view())) {
        if (reading.implausible() && below_very_low(reading.value())) {
            found.push_back(
                {reading.at, fmt::format("a value of {}, too low to be believed and too "
                                         "low to be passed over",
                                         glucose_words(reading.value().value(), reading.unit()))});
        }
    }
    for (const DiaryEntry& entry : review.input.diary) {
        if (entry.kind == DiaryKind::finger_prick && entry.glucose &&
            below_very_low(*entry.glucose)) {
            found.push_back({entry.at, "a finger-prick of " + glucose_words(entry.glucose->value(),
                                                                            entry.glucose->unit)});
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const VeryLow& a, const VeryLow& b) { return a.at > b.at; });
    return found;
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
        fmt::format("{}, {}: {}.", day_and_time(review.input.zones.wall_time(latest.at)),
                    age_words(review.input.as_of - latest.at), latest.what);
    if (found.size() > 1) {
        finding.sentence +=
            fmt::format(" {} very low stretches or values in all, the first {}.", found.size(),
                        day_and_time(review.input.zones.wall_time(found.back().at)));
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
