#include "intake/wall_order.hpp"

#include "intake/repeated_hour.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <utility>

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

// The same without those that stand twice.
std::vector<WallTime> each_once(std::span<const WallTime> sorted) {
    std::vector<WallTime> once;
    std::ranges::unique_copy(sorted, std::back_inserter(once));
    return once;
}

bool unbroken(std::span<const WallTime> walls, seconds most) {
    for (std::size_t i = 1; i < walls.size(); ++i) {
        if (walls[i] - walls[i - 1] > most) {
            return false;
        }
    }
    return walls.size() >= 4;
}

// Whether a regular grid, at the step it has round [low, high), runs through it once, with readings
// on both sides. Rows that a file holds twice stand twice outside it as well.
bool one_pass_through(WallTime low, WallTime high, std::span<const WallTime> sorted) {
    const auto rows = within(sorted, low - hours{2}, high + hours{2});
    const auto rows_inside = within(sorted, low, high);
    const auto around = each_once(rows);
    const auto inside = each_once(rows_inside);
    const seconds step = usual_step(around);
    if (step.count() <= 0 || step > hours{1} || inside.size() < 2) {
        return false;
    }
    const auto of_one_pass = static_cast<std::size_t>((high - low) / step);
    const bool both_sides = around.front() < low && around.back() >= high;
    const bool as_often_as_outside = rows_inside.size() * (around.size() - inside.size()) <=
                                     (rows.size() - rows_inside.size()) * inside.size();
    return both_sides && 2 * inside.size() <= 3 * of_one_pass && as_often_as_outside &&
           unbroken(around, step + step / 2);
}

// Further than this from every change of offset a wall time has one meaning: no zone shifts by
// more.
constexpr seconds widest_shift = hours{26};

// Rows in a repeated hour belong to one night if no more than this lies between.
constexpr hours one_night{6};

// Rows [first, last] of a file, all but a few in a repeated hour.
struct Stretch {
    std::size_t first;
    std::size_t last;
};

// Which way the file runs round a stretch of rows, as told by the rows before and after it.
class Surroundings {
  public:
    Surroundings(std::span<const WallTime> walls, const Stretch& rows)
        : walls_(walls), rows_(rows) {
        const auto [low, high] = std::minmax_element(at(rows.first), at(rows.last + 1));
        low_ = *low;
        high_ = *high;
    }

    bool falling(bool mostly) const {
        const auto before = row_before();
        const auto after = row_after();
        const int up = (before && *before < low_ ? 1 : 0) + (after && *after > high_ ? 1 : 0);
        const int down = (before && *before > high_ ? 1 : 0) + (after && *after < low_ ? 1 : 0);
        return up == down ? mostly : down > up;
    }

    // Among rows that run to and fro a step back is nothing but one more.
    bool in_order(bool falling) const {
        constexpr std::size_t looked_at = 12;
        const std::size_t from = rows_.first - std::min(rows_.first, looked_at);
        const std::size_t to = std::min(walls_.size() - 1, rows_.last + looked_at);
        std::size_t steps = 0;
        std::size_t back = 0;
        for (std::size_t i = from + 1; i <= to; ++i) {
            if (i <= rows_.first || i > rows_.last) {
                const bool fell = walls_[i] < walls_[i - 1];
                back += walls_[i] != walls_[i - 1] && fell != falling ? 1U : 0U;
                ++steps;
            }
        }
        return 4 * back <= steps;
    }

    // What the rows before and after the stretch showed, if they are of its night.
    std::optional<WallTime> row_before() const {
        return rows_.first > 0 ? near(walls_[rows_.first - 1]) : std::nullopt;
    }
    std::optional<WallTime> row_after() const {
        return rows_.last + 1 < walls_.size() ? near(walls_[rows_.last + 1]) : std::nullopt;
    }

  private:
    std::span<const WallTime>::iterator at(std::size_t row) const {
        return walls_.begin() + static_cast<std::ptrdiff_t>(row);
    }
    std::optional<WallTime> near(WallTime wall) const {
        return wall > low_ - one_night && wall < high_ + one_night ? std::optional{wall}
                                                                   : std::nullopt;
    }

    std::span<const WallTime> walls_;
    Stretch rows_;
    WallTime low_{};
    WallTime high_{};
};

// Places the rows of a repeated hour by their order in the file.
class RepeatedRows {
  public:
    RepeatedRows(std::span<const WallTime> walls, WallResolver& resolver,
                 std::vector<PlacedTime>& result)
        : walls_(walls), resolver_(resolver), result_(result), mostly_(mostly_descending(walls)) {}

    // `rows`: all that are in a repeated hour, ascending.
    void place(std::span<const std::size_t> rows) {
        for (std::size_t begin = 0; begin < rows.size();) {
            std::size_t end = begin + 1;
            while (end < rows.size() && go_on(rows[end - 1], rows[end])) {
                ++end;
            }
            place_stretch(rows.subspan(begin, end - begin));
            begin = end;
        }
    }

  private:
    // A row or two of another hour between are out of order themselves, if the rows of this one
    // follow one another round them.
    bool go_on(std::size_t row, std::size_t next) const {
        constexpr std::size_t few = 3;
        if (std::chrono::abs(walls_[next] - walls_[row]) > one_night) {
            return false;
        }
        const bool follows = mostly_ ? walls_[next] < walls_[row] : walls_[next] > walls_[row];
        return next == row + 1 || (next - row <= few && follows);
    }

    void place_stretch(std::span<const std::size_t> rows) {
        const Surroundings round(walls_, {rows.front(), rows.back()});
        const bool falling = round.falling(mostly_);
        const WallResolution meaning = resolver_.at(walls_[rows.front()]);
        RepeatedHour hour{
            {}, meaning.second - meaning.first, round.row_before(), round.row_after()};
        for (const std::size_t row : rows) {
            hour.walls.push_back(walls_[row]);
        }
        if (falling) {
            std::ranges::reverse(hour.walls);
            std::swap(hour.before, hour.after);
        }
        const auto second = round.in_order(falling) ? second_showing_from(hour) : std::nullopt;
        for (std::size_t n = 0; second && n < rows.size(); ++n) {
            const std::size_t row = rows[falling ? rows.size() - 1 - n : n];
            result_[row].kind = PlacedTime::Kind::by_order;
            result_[row].at = n >= *second ? resolver_.at(walls_[row]).second : result_[row].at;
        }
    }

    std::span<const WallTime> walls_;
    WallResolver& resolver_;
    std::vector<PlacedTime>& result_;
    bool mostly_;  // descending
};

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
    std::vector<std::size_t> repeated;
    WallResolver resolver(zones);
    for (std::size_t i = 0; i < walls.size(); ++i) {
        const WallResolution found = resolver.at(walls[i]);
        result[i].at = found.first;
        if (found.kind == WallResolution::Kind::skipped) {
            result[i].kind = PlacedTime::Kind::skipped;
        } else if (found.kind == WallResolution::Kind::repeated) {
            result[i].kind = PlacedTime::Kind::alone;
            repeated.push_back(i);
        }
    }
    if (!repeated.empty()) {
        RepeatedRows(walls, resolver, result).place(repeated);
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
    const auto [first, last] = std::ranges::minmax_element(walls);
    const std::vector<Instant> changes = changes_within(*first, *last, zones);
    if (changes.empty()) {
        return false;
    }
    std::vector<WallTime> in_order;
    std::span<const WallTime> sorted = walls;
    if (!std::ranges::is_sorted(walls)) {
        in_order.assign(walls.begin(), walls.end());
        std::ranges::sort(in_order);
        sorted = in_order;
    }
    return std::ranges::any_of(changes, [&](Instant change) {
        const seconds before = zones.zone_at(change - seconds{1}).offset_at(change - seconds{1});
        const seconds after = zones.zone_at(change).offset_at(change);
        const WallTime old_wall{(change + before).time_since_epoch()};
        const WallTime new_wall{(change + after).time_since_epoch()};
        const auto [low, high] = std::minmax(old_wall, new_wall);
        return one_pass_through(low, high, sorted);
    });
}

}  // namespace tracewright
