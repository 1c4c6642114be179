#include "measures/paired_differences.hpp"

namespace tracewright {

namespace {

using std::chrono::seconds;

template <typename Target>
std::vector<PairedDifference> paired(const TraceView& view, Target target_of) {
    constexpr GlucoseUnit mg = GlucoseUnit::mg_per_dl;
    std::vector<PairedDifference> pairs;
    const auto readings = readings_within(view);
    EarlierReading earlier(readings);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const Reading& later = readings[i];
        if (const Reading* before = earlier.to(i, target_of(later.at))) {
            pairs.push_back({later.at, later.value().in(mg)-before->value().in(mg)});
        }
    }
    return pairs;
}

}  // namespace

std::vector<PairedDifference> differences_after(const TraceView& view, seconds apart) {
    return paired(view, [&](Instant at) { return at - apart; });
}

std::vector<PairedDifference> differences_to_day_before(const TraceView& view,
                                                        const ZoneHistory& zones) {
    WallClock clock(zones);
    WallClock clock_before(zones);
    constexpr seconds day = std::chrono::days{1};
    return paired(view, [&](Instant at) {
        return at - day + clock.offset_at(at) - clock_before.offset_at(at - day);
    });
}

}  // namespace tracewright
