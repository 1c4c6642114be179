#include "measures/paired_differences.hpp"

#include <cstddef>

namespace tracewright {

namespace {

using std::chrono::seconds;

template <typename Target>
std::vector<PairedDifference> paired(const TraceView& view, Target target_of) {
    std::vector<PairedDifference> pairs;
    const auto readings = readings_within(view);
    std::size_t j = 0;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (readings[i].implausible()) {
            continue;
        }
        const Instant target = target_of(readings[i].at);
        while (j > 0 && readings[j].at > target) {
            --j;
        }
        while (j + 1 < i && std::chrono::abs(readings[j + 1].at - target) <=
                                std::chrono::abs(readings[j].at - target)) {
            ++j;
        }
        const bool near = 2 * std::chrono::abs(readings[j].at - target) <= readings[i].interval();
        if (j < i && near && !readings[j].implausible()) {
            pairs.push_back({readings[i].at,
                             readings[i].value().in(GlucoseUnit::mg_per_dl)-readings[j].value().in(
                                 GlucoseUnit::mg_per_dl)});
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
