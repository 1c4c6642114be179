#include "intake/repeated_hour.hpp"

#include <algorithm>
#include <set>
#include <span>
#include <utility>

namespace tracewright {

namespace {

using std::chrono::seconds;
using Walls = std::span<const WallTime>;

// For each count of rows from the front, how many show a time that stood there before; a row that
// only says again what the row before it said is a duplicate and counts as none.
template <typename Iterator>
std::vector<std::size_t> times_again(Iterator first, Iterator last) {
    std::vector<std::size_t> again{0};
    std::set<WallTime> seen;
    for (Iterator row = first; row != last; ++row) {
        const bool said_again = row != first && *row == *(row - 1);
        const bool is_new = seen.insert(*row).second;
        again.push_back(again.back() + (is_new || said_again ? 0U : 1U));
    }
    return again;
}

// The step back that most likely parts the two showings; empty if none goes back.
std::optional<std::size_t> likeliest_step_back(Walls walls) {
    const auto from_front = times_again(walls.begin(), walls.end());
    const auto from_back = times_again(walls.rbegin(), walls.rend());
    std::optional<std::size_t> best;
    std::pair<std::size_t, seconds> least;  // times again, and how far short of the widest
    for (std::size_t i = 1; i < walls.size(); ++i) {
        const std::pair<std::size_t, seconds> here{from_front[i] + from_back[walls.size() - i],
                                                   walls[i] - walls[i - 1]};
        if (here.second < seconds{0} && (!best || here < least)) {
            best = i;
            least = here;
        }
    }
    return best;
}

// How often the rows change from one showing to the other if those of the stretch of times that
// both have are laid in order of their times.
std::size_t turns_in_overlap(Walls first, Walls second) {
    const WallTime low = *std::ranges::min_element(second);
    const WallTime high = *std::ranges::max_element(first);
    std::vector<std::pair<WallTime, bool>> rows;
    for (const Walls showing : {first, second}) {
        for (const WallTime wall : showing) {
            if (wall >= low && wall <= high) {
                rows.emplace_back(wall, showing.data() == second.data());
            }
        }
    }
    std::ranges::sort(rows);
    std::size_t turns = 0;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        turns += rows[i].second != rows[i - 1].second ? 1U : 0U;
    }
    return turns;
}

// A row or two that stand behind many later ones, of times that none of these has.
bool merely_late(Walls first, Walls second) {
    const WallTime high = *std::ranges::max_element(first);
    const auto late = std::ranges::count_if(second, [&](WallTime wall) { return wall <= high; });
    const auto passed =
        std::ranges::count_if(first, [&](WallTime wall) { return wall > second.front(); });
    return late <= 2 && passed >= 3 * late && std::ranges::none_of(second, [&](WallTime wall) {
               return wall <= high && std::ranges::find(first, wall) != first.end();
           });
}

bool parts_two_showings(Walls first, Walls second, seconds shift) {
    const bool wide = 2 * (first.back() - second.front()) >= shift;
    return turns_in_overlap(first, second) >= 3 || (wide && !merely_late(first, second));
}

// Without a step back: by the neighbours, where the rows are regular enough to have a step.
std::optional<std::size_t> by_neighbours(const RepeatedHour& hour) {
    const std::size_t all = hour.walls.size();
    const auto& walls = hour.walls;
    // A grid of just the shift shows one time twice.
    if (all == 2 && walls[0] == walls[1] && hour.before && hour.after &&
        walls[0] - *hour.before == hour.shift && *hour.after - walls[1] == hour.shift) {
        return 1;
    }
    std::vector<WallTime> times = walls;
    std::ranges::sort(times);
    const bool twice = std::ranges::adjacent_find(times) != times.end();
    if (twice || times.size() < 3) {
        return std::nullopt;
    }
    const seconds near = 2 * usual_step(times);
    const bool follows = hour.before && times.front() - *hour.before <= near;
    const bool leads = hour.after && *hour.after - times.back() <= near;
    if (follows == leads) {
        return std::nullopt;
    }
    return follows ? all : 0;
}

}  // namespace

seconds usual_step(const std::vector<WallTime>& sorted) {
    std::vector<seconds> steps;
    constexpr std::size_t enough = 5000;
    for (std::size_t i = 1; i < std::min(sorted.size(), enough); ++i) {
        steps.push_back(sorted[i] - sorted[i - 1]);
    }
    if (steps.empty()) {
        return seconds{0};
    }
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::ranges::nth_element(steps, middle);
    return *middle;
}

std::optional<std::size_t> second_showing_from(const RepeatedHour& hour) {
    const Walls walls = hour.walls;
    const auto step_back = likeliest_step_back(walls);
    if (step_back &&
        parts_two_showings(walls.first(*step_back), walls.subspan(*step_back), hour.shift)) {
        return step_back;
    }
    return by_neighbours(hour);
}

}  // namespace tracewright
