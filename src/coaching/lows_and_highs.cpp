#include "coaching/lows_and_highs.hpp"

#include "coaching/ladder_rules.hpp"
#include "findings/wording.hpp"
#include "measures/episodes.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>

namespace tracewright {

namespace {

std::string value_words(const Reading& reading, GlucoseUnit unit) {
    const char* beyond = reading.limit() == Limit::below   ? "below "
                         : reading.limit() == Limit::above ? "above "
                                                           : "";
    return beyond + glucose_words(reading.value().in(unit), unit);
}

std::string unseen(const Episode& episode) {
    return episode.start_not_seen && episode.end_not_seen ? ", start and end not seen"
           : episode.start_not_seen                       ? ", start not seen"
           : episode.end_not_seen                         ? ", end not seen"
                                                          : "";
}

LowOrHigh told(const Episode& episode, const std::string& what, const Wear& wear,
               GlucoseUnit unit) {
    LowOrHigh one;
    one.at = episode.from;
    one.low = episode.kind == EpisodeKind::low || episode.kind == EpisodeKind::very_low;
    one.very_low = episode.kind == EpisodeKind::very_low;
    one.what = what + unseen(episode);
    one.lasted = hours_and_minutes(episode.lasted);
    one.above_300 = above_300(episode.extreme);
    one.value = value_words(episode.extreme, unit);
    one.value_at = episode.extreme.at;
    one.seen_by = wear.label;
    return one;
}

void add_of_wear(const Wear& wear, Interval window, GlucoseUnit unit, std::vector<LowOrHigh>& all) {
    const TraceView view = cut(wear.view(), window);
    const std::vector<Episode> episodes = episodes_of(view);
    std::vector<Episode> very_low = cut_short_very_lows(view);
    for (Episode& cut_short : very_low) {
        cut_short.kind = EpisodeKind::very_low;
    }
    std::ranges::copy_if(episodes, std::back_inserter(very_low), [](const Episode& episode) {
        return episode.kind == EpisodeKind::very_low;
    });
    for (const Episode& episode : very_low) {
        all.push_back(told(episode, "very low", wear, unit));
    }
    for (const Episode& episode : episodes) {
        const bool holds_very_low = std::ranges::any_of(very_low, [&](const Episode& inner) {
            return inner.from < episode.to && episode.from < inner.to;
        });
        if (episode.kind == EpisodeKind::low && !holds_very_low) {
            all.push_back(told(episode, "low", wear, unit));
        } else if (episode.kind == EpisodeKind::very_high) {
            all.push_back(told(episode, "very high", wear, unit));
        }
    }
}

void add_of_diary(const DiaryEntry& entry, GlucoseUnit unit, std::vector<LowOrHigh>& all) {
    if (entry.kind != DiaryKind::finger_prick || !entry.glucose) {
        return;
    }
    const Band band = band_of(Reading{{}, *entry.glucose, std::chrono::seconds{1}});
    if (band == Band::in_range || band == Band::high) {
        return;
    }
    const bool low = band != Band::very_high;
    all.push_back({entry.at, low, band == Band::very_low,
                   above_300(Reading{entry.at, *entry.glucose, std::chrono::seconds{1}}),
                   band == Band::very_low ? "very low"
                   : low                  ? "low"
                                          : "very high",
                   "", glucose_words(entry.glucose->in(unit), unit), entry.at, "finger-prick"});
}

}  // namespace

std::vector<LowOrHigh> lows_and_highs(std::span<const Wear> wears,
                                      std::span<const DiaryEntry> diary, Interval window,
                                      GlucoseUnit unit) {
    std::vector<LowOrHigh> all;
    for (const Wear& wear : wears) {
        if (!wear.empty() && intersection(wear.sensed_span(), window).length().count() > 0) {
            add_of_wear(wear, window, unit, all);
        }
    }
    for (const DiaryEntry& entry : diary) {
        if (window.contains(entry.at)) {
            add_of_diary(entry, unit, all);
        }
    }
    std::ranges::stable_sort(all,
                             [](const LowOrHigh& a, const LowOrHigh& b) { return a.at > b.at; });
    return all;
}

}  // namespace tracewright
