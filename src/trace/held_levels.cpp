#include "trace/held_levels.hpp"

#include <algorithm>
#include <utility>

namespace tracewright {

namespace {

bool below(const Glucose& a, const Glucose& b) {
    return a.in(GlucoseUnit::mg_per_dl) < b.in(GlucoseUnit::mg_per_dl);
}

// `wears` in order of their starts.
Wear* wear_for(std::span<Wear* const> wears, Instant at) {
    Wear* last = wears.front();
    for (Wear* wear : wears) {
        if (!wear->empty() && wear->sensed_span().contains(at)) {
            return wear;
        }
        last = wear->start <= at ? wear : last;
    }
    return last;
}

}  // namespace

void give_held(std::vector<Wear*> wears, std::span<const HeldLevel> held) {
    if (wears.empty() || held.empty()) {
        return;
    }
    std::ranges::stable_sort(wears, {}, [](const Wear* wear) { return wear->start; });
    for (const HeldLevel& one : held) {
        wear_for(wears, one.at)->held.emplace_back(one.at, one.value, std::chrono::seconds{1});
    }
    for (Wear* wear : wears) {
        std::ranges::stable_sort(wear->held, {}, &Reading::at);
    }
}

void give_held(std::vector<Wear>& wears, std::span<const HeldLevel> held) {
    std::vector<Wear*> each;
    for (Wear& wear : wears) {
        each.push_back(&wear);
    }
    give_held(std::move(each), held);
}

std::vector<DisputedMoment> disputed_moments(const Wear& wear) {
    std::vector<DisputedMoment> moments;
    const auto add = [&](Instant at, const Glucose& level) {
        if (moments.empty() || moments.back().at != at) {
            moments.push_back({at, level, level});
            return;
        }
        DisputedMoment& moment = moments.back();
        moment.lowest = std::min(moment.lowest, level, below);
        moment.highest = std::max(moment.highest, level, below);
    };
    for (const Reading& reading : wear.held) {
        add(reading.at, reading.value());
        const auto stored = std::ranges::lower_bound(wear.readings, reading.at, {}, &Reading::at);
        if (stored != wear.readings.end() && stored->at == reading.at) {
            add(reading.at, stored->value());
        }
    }
    return moments;
}

}  // namespace tracewright
