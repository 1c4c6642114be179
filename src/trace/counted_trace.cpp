#include "trace/counted_trace.hpp"

#include <algorithm>
#include <cstddef>

namespace tracewright {

namespace {

using std::chrono::seconds;

// A stretch of time over which the same wears had begun and not ended.
struct Stretch {
    Interval when;
    std::vector<std::size_t> on;
};

std::vector<Stretch> stretches_of(std::span<const Wear> wears) {
    std::vector<Instant> edges;
    for (const Wear& wear : wears) {
        if (!wear.empty()) {
            edges.push_back(wear.sensed_span().from);
            edges.push_back(wear.sensed_span().to);
        }
    }
    std::sort(edges.begin(), edges.end());
    edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
    std::vector<Stretch> stretches;
    for (std::size_t e = 0; e + 1 < edges.size(); ++e) {
        Stretch stretch{{edges[e], edges[e + 1]}, {}};
        for (std::size_t w = 0; w < wears.size(); ++w) {
            const bool on = !wears[w].empty() && wears[w].sensed_span().from <= stretch.when.from &&
                            wears[w].sensed_span().to >= stretch.when.to;
            if (on) {
                stretch.on.push_back(w);
            }
        }
        stretches.push_back(std::move(stretch));
    }
    return stretches;
}

struct Ranked {
    std::size_t wear;
    seconds sensed;
};

CountedTrace::Choice choice_of(std::span<const Wear> wears, const Stretch& stretch,
                               std::optional<std::size_t> prefer) {
    std::vector<Ranked> ranked;
    for (const std::size_t w : stretch.on) {
        ranked.push_back({w, sensed(cut(wears[w].view(), stretch.when))});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [&](const Ranked& a, const Ranked& b) {
        const auto preferred = [&](const Ranked& r) { return prefer && r.wear == *prefer; };
        if (preferred(a) != preferred(b)) {
            return preferred(a);
        }
        if (wears[a.wear].chosen != wears[b.wear].chosen) {
            return wears[a.wear].chosen;
        }
        if (a.sensed != b.sensed) {
            return a.sensed > b.sensed;
        }
        if (wears[a.wear].interval != wears[b.wear].interval) {
            return wears[a.wear].interval < wears[b.wear].interval;
        }
        return wears[a.wear].start < wears[b.wear].start;
    });
    const Ranked& first = ranked.front();
    const Ranked& second = ranked[1];
    std::string why = "it started first";
    if (prefer && first.wear == *prefer) {
        why = "it was asked for";
    } else if (wears[first.wear].chosen != wears[second.wear].chosen) {
        why = "a coach chose it";
    } else if (first.sensed != second.sensed) {
        why = "it has more readings over the shared time";
    } else if (wears[first.wear].interval != wears[second.wear].interval) {
        why = "it reports more often";
    }
    CountedTrace::Choice choice{stretch.when, first.wear, {}, std::move(why)};
    for (std::size_t i = 1; i < ranked.size(); ++i) {
        choice.not_counted.push_back(ranked[i].wear);
    }
    return choice;
}

void take(CountedTrace& trace, const Wear& wear, std::size_t index, Interval when) {
    const auto before = [](const Reading& reading, Instant at) { return reading.at < at; };
    const auto first =
        std::lower_bound(wear.readings.begin(), wear.readings.end(), when.from, before);
    const auto last = std::lower_bound(first, wear.readings.end(), when.to, before);
    trace.readings.insert(trace.readings.end(), first, last);
    trace.wear_of.insert(trace.wear_of.end(), static_cast<std::size_t>(last - first), index);
}

}  // namespace

CountedTrace counted_trace(std::span<const Wear> wears, std::optional<std::size_t> prefer) {
    CountedTrace trace;
    for (const Stretch& stretch : stretches_of(wears)) {
        if (stretch.on.empty()) {
            continue;
        }
        std::size_t counted = stretch.on.front();
        if (stretch.on.size() > 1) {
            trace.choices.push_back(choice_of(wears, stretch, prefer));
            counted = trace.choices.back().counted;
        }
        take(trace, wears[counted], counted, stretch.when);
    }
    if (!trace.readings.empty()) {
        trace.window = {trace.readings.front().at,
                        trace.readings.back().at + trace.readings.back().interval()};
    }
    return trace;
}

std::size_t CountedTrace::wear_at(Instant at) const {
    const auto after = std::ranges::upper_bound(readings, at, {}, &Reading::at);
    const auto place = static_cast<std::size_t>(after - readings.begin());
    return wear_of[place == 0 ? 0 : place - 1];
}

}  // namespace tracewright
