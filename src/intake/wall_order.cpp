#include "intake/wall_order.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>

namespace tracewright {

namespace {

using std::chrono::hours;
using std::chrono::seconds;

bool mostly_descending(std::span<const WallTime> walls) {
    std::size_t down = 0;
    std::size_t up = 0;
    for (std::size_t i = 1; i < walls.size(); ++i) {
        down += walls[i] < walls[i - 1] ? 1U : 0U;
        up += walls[i] > walls[i - 1] ? 1U : 0U;
    }
    return down > up;
}

// The changes of offset whose wall times lie within the data.
std::vector<Instant> changes_within(WallTime first, WallTime last, const ZoneHistory& zones) {
    std::vector<Instant> changes;
    Instant at = zones.resolve(first).first - hours{3};
    const Instant end = zones.resolve(last).second + hours{3};
    while (true) {
        const Interval stretch = zones.constant_offset_round(at);
        if (stretch.to >= end || stretch.to <= at) {
            return changes;
        }
        changes.push_back(stretch.to);
        at = stretch.to;
    }
}

// The wall times of a sorted list within [from, to).
std::span<const WallTime> within(std::span<const WallTime> sorted, WallTime from, WallTime to) {
    const auto first = std::lower_bound(sorted.begin(), sorted.end(), from);
    const auto last = std::lower_bound(first, sorted.end(), to);
    return {first, last};
}

bool unbroken(std::span<const WallTime> walls, seconds most) {
    for (std::size_t i = 1; i < walls.size(); ++i) {
        if (walls[i] - walls[i - 1] > most || walls[i] == walls[i - 1]) {
            return false;
        }
    }
    return walls.size() >= 4;
}

// The most common step of a sorted list: what the device reports at.
seconds usual_step(std::span<const WallTime> sorted) {
    std::vector<seconds> steps;
    constexpr std::size_t enough = 5000;
    for (std::size_t i = 1; i < std::min(sorted.size(), enough); ++i) {
        steps.push_back(sorted[i] - sorted[i - 1]);
    }
    if (steps.empty()) {
        return seconds{0};
    }
    std::nth_element(steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2),
                     steps.end());
    return steps[steps.size() / 2];
}

// Further than this from every change of offset a wall time has one meaning: no zone shifts by
// more.
constexpr seconds widest_shift = hours{26};

}  // namespace

WallResolution WallResolver::looked_up(WallTime wall) {
    const WallResolution found = zones_.resolve(wall);
    if (found.kind == WallResolution::Kind::unique) {
        const Interval stretch = zones_.constant_offset_round(found.first);
        offset_ = zones_.zone_at(found.first).offset_at(found.first);
        plain_from_ = WallTime{(stretch.from + offset_ + widest_shift).time_since_epoch()};
        plain_to_ = WallTime{(stretch.to + offset_ - widest_shift).time_since_epoch()};
    }
    return found;
}

std::vector<PlacedTime> placed(std::span<const WallTime> walls, const ZoneHistory& zones) {
    std::vector<PlacedTime> result(walls.size());
    WallResolver resolver(zones);
    const bool descending = mostly_descending(walls);
    std::optional<WallTime> previous_wall;
    std::optional<Instant> previous;
    bool second_showing = false;
    std::optional<seconds> step;  // worked out where a time was shown twice
    for (std::size_t n = 0; n < walls.size(); ++n) {
        const std::size_t i = descending ? walls.size() - 1 - n : n;
        const WallResolution found = resolver.at(walls[i]);
        PlacedTime& placed = result[i];
        placed.at = found.first;
        if (found.kind == WallResolution::Kind::skipped) {
            placed.kind = PlacedTime::Kind::skipped;
            continue;
        }
        if (found.kind == WallResolution::Kind::repeated) {
            // The shift is how far the clock went back; a step back by about that, less the step
            // that passed meanwhile, is the second pass. A shorter one is a row out of its order.
            const seconds shift = found.second - found.first;
            if (!step) {
                std::vector<WallTime> in_order(walls.begin(), walls.end());
                std::sort(in_order.begin(), in_order.end());
                step = usual_step(in_order);
            }
            const bool near_before =
                previous && std::chrono::abs(found.first - *previous) < hours{6};
            const bool back = previous_wall && walls[i] <= *previous_wall &&
                              *previous_wall - walls[i] <= shift &&
                              *previous_wall - walls[i] >= shift - 2 * *step;
            second_showing = near_before && (second_showing || back);
            placed.at = second_showing ? found.second : found.first;
            placed.kind = near_before ? PlacedTime::Kind::by_order : PlacedTime::Kind::alone;
        } else {
            second_showing = false;
        }
        previous = placed.at;
        previous_wall = walls[i];
    }
    return result;
}

bool clock_changes_between(WallTime first, WallTime last, const ZoneHistory& zones) {
    return !changes_within(first, last, zones).empty();
}

bool clock_did_not_change(std::span<const WallTime> walls, const ZoneHistory& zones) {
    if (walls.size() < 12) {
        return false;
    }
    std::vector<WallTime> in_order;
    std::span<const WallTime> sorted = walls;
    if (!std::is_sorted(walls.begin(), walls.end())) {
        in_order.assign(walls.begin(), walls.end());
        std::sort(in_order.begin(), in_order.end());
        sorted = in_order;
    }
    const seconds step = usual_step(sorted);
    if (step.count() <= 0 || step > hours{1}) {
        return false;
    }
    for (const Instant change : changes_within(sorted.front(), sorted.back(), zones)) {
        const seconds before = zones.zone_at(change - seconds{1}).offset_at(change - seconds{1});
        const seconds after = zones.zone_at(change).offset_at(change);
        const WallTime old_wall{(change + before).time_since_epoch()};
        const WallTime new_wall{(change + after).time_since_epoch()};
        const auto [low, high] = std::minmax(old_wall, new_wall);
        const auto around = within(sorted, low - hours{2}, high + hours{2});
        const auto inside = within(sorted, low, high);
        // Skipped or repeated alike: one regular pass through the hour, and readings on both sides.
        const bool both_sides = !around.empty() && around.front() < low && around.back() >= high;
        const auto of_one_pass = static_cast<std::size_t>((high - low) / step);
        const bool one_pass = inside.size() >= 2 && 2 * inside.size() <= 3 * of_one_pass;
        if (both_sides && one_pass && unbroken(around, step + step / 2)) {
            return true;
        }
    }
    return false;
}

}  // namespace tracewright
