#include "trace/pressure_dip.hpp"

#include <algorithm>
#include <optional>

namespace tracewright {

namespace {

using std::chrono::minutes;

constexpr double least_fall = 25;            // mg/dL
constexpr double flat_over_20_minutes = 10;  // mg/dL: 0.5 a minute
constexpr double share_back = 0.7;
constexpr minutes fall_within{15};
constexpr minutes flat_before{20};
constexpr minutes shortest_bottom{10};
constexpr minutes longest_bottom{90};
constexpr minutes back_within{20};

double level(const Reading& reading) {
    return reading.value().in(GlucoseUnit::mg_per_dl);
}

using Readings = std::span<const Reading>;

// Seen for the 20 minutes before `at`, without a gap, and hardly moving.
bool flat_until(Readings readings, std::size_t at) {
    double low = level(readings[at]);
    double high = low;
    for (std::size_t i = at; i-- > 0;) {
        if (readings[i + 1].at - readings[i].at > 2 * readings[i].interval()) {
            return false;
        }
        low = std::min(low, level(readings[i]));
        high = std::max(high, level(readings[i]));
        if (high - low >= flat_over_20_minutes) {
            return false;
        }
        if (readings[at].at - readings[i].at >= flat_before) {
            return true;
        }
    }
    return false;
}

// The first reading at least 25 below `at` within 15 minutes of it.
std::optional<std::size_t> fallen_after(Readings readings, std::size_t at) {
    for (std::size_t i = at + 1;
         i < readings.size() && readings[i].at - readings[at].at <= fall_within; ++i) {
        if (level(readings[at]) - level(readings[i]) >= least_fall) {
            return i;
        }
    }
    return std::nullopt;
}

std::optional<std::pair<DipShape, std::size_t>> dip_from(Readings readings, std::size_t top) {
    const auto fallen = flat_until(readings, top) ? fallen_after(readings, top) : std::nullopt;
    if (!fallen) {
        return std::nullopt;
    }
    std::size_t lowest = *fallen;
    std::size_t last_at_bottom = *fallen;
    for (std::size_t i = *fallen; i < readings.size(); ++i) {
        if (readings[i].at - readings[*fallen].at > longest_bottom + back_within) {
            return std::nullopt;
        }
        if (level(readings[i]) < level(readings[lowest])) {
            lowest = i;
        }
        const double fall = level(readings[top]) - level(readings[lowest]);
        const double back = level(readings[i]) - level(readings[lowest]);
        if (back <= (1 - share_back) * fall) {
            last_at_bottom = i;
        } else if (back >= share_back * fall) {
            const auto bottom = readings[last_at_bottom].at - readings[*fallen].at +
                                readings[last_at_bottom].interval();
            if (readings[i].at - readings[last_at_bottom].at > back_within ||
                bottom < shortest_bottom || bottom > longest_bottom) {
                return std::nullopt;
            }
            return std::pair{DipShape{{readings[top].at, readings[i].at},
                                      readings[lowest].at,
                                      readings[lowest].value()},
                             i};
        }
    }
    return std::nullopt;
}

}  // namespace

std::vector<DipShape> dip_shapes(const Wear& wear) {
    std::vector<DipShape> dips;
    const Readings readings(wear.readings);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (const auto found = dip_from(readings, i)) {
            dips.push_back(found->first);
            i = found->second;
        }
    }
    return dips;
}

}  // namespace tracewright
