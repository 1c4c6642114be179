#include "responses/unwritten_rise.hpp"

#include <algorithm>
#include <chrono>

namespace tracewright {

namespace {

using namespace std::chrono_literals;

constexpr double least_rise = 45;
constexpr double low_below = 70;

double mg(const Reading& reading) {
    return reading.value().in(GlucoseUnit::mg_per_dl);
}

bool explained_by_a_meal(Instant start, std::span<const EatingOccasion> occasions) {
    return std::any_of(occasions.begin(), occasions.end(), [&](const EatingOccasion& occasion) {
        return occasion.at <= start + 30min && occasion.last >= start - 2h;
    });
}

bool may_be_dawn(Instant start, const Diary& diary, const ZoneHistory& zones) {
    const WallTime wall = zones.wall_time(start);
    const auto clock = wall - std::chrono::floor<std::chrono::days>(wall);
    if (clock >= 3h && clock < 8h) {
        return true;
    }
    return std::any_of(diary.begin(), diary.end(), [&](const DiaryEntry& entry) {
        return entry.kind == DiaryKind::sleep && entry.until && entry.at <= start &&
               start <= *entry.until + 1h;
    });
}

bool after_a_low(std::span<const Reading> readings, std::size_t start) {
    for (std::size_t i = start + 1; i-- > 0;) {
        if (readings[start].at - readings[i].at > 90min) {
            return false;
        }
        if (mg(readings[i]) < low_below || readings[i].limit() == Limit::below) {
            return true;
        }
    }
    return false;
}

}  // namespace

std::vector<UnwrittenRise> unwritten_rises(const TraceView& trace,
                                           std::span<const EatingOccasion> occasions,
                                           const Diary& diary, const ZoneHistory& zones) {
    std::vector<UnwrittenRise> rises;
    const std::span<const Reading> readings = readings_within(trace);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (readings[i].implausible()) {
            continue;
        }
        std::size_t top = i;
        for (std::size_t j = i + 1; j < readings.size() && readings[j].at - readings[i].at <= 60min;
             ++j) {
            if (!readings[j].implausible() && mg(readings[j]) > mg(readings[top])) {
                top = j;
            }
        }
        const double rise = mg(readings[top]) - mg(readings[i]);
        // The start is the foot: a next reading that is no higher is a better one.
        const bool foot = i + 1 >= readings.size() || mg(readings[i + 1]) > mg(readings[i]);
        if (rise < least_rise || !foot) {
            continue;
        }
        const Instant start = readings[i].at;
        if (!explained_by_a_meal(start, occasions) && !may_be_dawn(start, diary, zones) &&
            !after_a_low(readings, i)) {
            rises.push_back({start, readings[top].at, rise});
        }
        // One rise is told once: on from where glucose is no longer climbing, two hours at least.
        while (i + 1 < readings.size() &&
               (readings[i + 1].at - start < 2h || mg(readings[i + 1]) > mg(readings[i]))) {
            ++i;
        }
    }
    return rises;
}

}  // namespace tracewright
