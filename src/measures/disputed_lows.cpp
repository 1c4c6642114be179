#include "measures/disputed_lows.hpp"

#include "measures/episodes.hpp"
#include "measures/time_in_bands.hpp"

#include <algorithm>

namespace tracewright {

namespace {

constexpr std::chrono::hours one_low{1};

bool very_low(const Glucose& level) {
    return band_of(Reading{{}, level, std::chrono::seconds{1}}) == Band::very_low;
}

}  // namespace

std::vector<DisputedLow> disputed_very_lows(const Wear& wear) {
    std::vector<DisputedLow> lows;
    if (wear.held.empty()) {
        return lows;
    }
    std::vector<Episode> told = wear.empty() ? std::vector<Episode>{} : episodes_of(wear.view());
    std::erase_if(told, [](const Episode& one) { return one.kind != EpisodeKind::very_low; });
    const std::chrono::seconds step = std::max(wear.interval, std::chrono::seconds{1});
    for (const DisputedMoment& moment : disputed_moments(wear)) {
        const bool known = std::ranges::any_of(
            told, [&](const Episode& one) { return one.from <= moment.at && moment.at < one.to; });
        if (known || !very_low(moment.lowest)) {
            continue;
        }
        if (lows.empty() || moment.at - lows.back().stretch.to > one_low) {
            lows.push_back({{moment.at, moment.at}, 0, true});
        }
        DisputedLow& low = lows.back();
        low.stretch.to = moment.at + step;
        ++low.moments;
        low.all_below = low.all_below && very_low(moment.highest);
    }
    return lows;
}

}  // namespace tracewright
