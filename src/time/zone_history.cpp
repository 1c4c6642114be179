#include "time/zone_history.hpp"

#include <algorithm>
#include <stdexcept>

namespace tracewright {

namespace {

constexpr Instant beginning{std::chrono::sys_days{std::chrono::year{1} / 1 / 1}};
constexpr std::chrono::days one_day{1};

}  // namespace

ZoneHistory::ZoneHistory(Zone home) {
    changes_.push_back({beginning, std::move(home)});
}

void ZoneHistory::change(Instant from, Zone zone) {
    if (from <= changes_.back().from) {
        throw std::invalid_argument("zone changes must come in ascending order of time");
    }
    changes_.push_back({from, std::move(zone)});
}

const Zone& ZoneHistory::zone_at(Instant at) const {
    const auto after = std::upper_bound(changes_.begin() + 1, changes_.end(), at,
                                        [](Instant t, const Since& s) { return t < s.from; });
    return std::prev(after)->zone;
}

WallTime ZoneHistory::wall_time(Instant at) const {
    return zone_at(at).wall_time(at);
}

WallResolution ZoneHistory::resolve(WallTime wall) const {
    std::vector<Instant> moments;
    for (std::size_t i = 0; i < changes_.size(); ++i) {
        const WallResolution found = changes_[i].zone.resolve(wall);
        if (found.kind == WallResolution::Kind::skipped) {
            continue;
        }
        for (const Instant at : {found.first, found.second}) {
            const bool held =
                at >= changes_[i].from && (i + 1 == changes_.size() || at < changes_[i + 1].from);
            if (held && (moments.empty() || moments.back() != at)) {
                moments.push_back(at);
            }
        }
    }
    if (moments.empty()) {
        const Instant jumped = first_showing(wall);
        return {WallResolution::Kind::skipped, jumped, jumped};
    }
    return {moments.size() == 1 ? WallResolution::Kind::unique : WallResolution::Kind::repeated,
            moments.front(), moments.back()};
}

Interval ZoneHistory::constant_offset_round(Instant at) const {
    const auto after = std::upper_bound(changes_.begin() + 1, changes_.end(), at,
                                        [](Instant t, const Since& s) { return t < s.from; });
    Interval stretch = std::prev(after)->zone.constant_offset_round(at);
    stretch.from = std::max(stretch.from, std::prev(after)->from);
    if (after != changes_.end()) {
        stretch.to = std::min(stretch.to, after->from);
    }
    return stretch;
}

CivilDate ZoneHistory::date_at(Instant at) const {
    const CivilDate shown = std::chrono::floor<std::chrono::days>(wall_time(at));
    // After a flight back across midnight the day that has begun goes on.
    return first_showing(WallTime{shown + one_day}) <= at ? shown + one_day : shown;
}

// The first moment at which the client's clock shows `wall` or anything later.
Instant ZoneHistory::first_showing(WallTime wall) const {
    Instant reached = beginning;
    for (std::size_t i = 0; i < changes_.size(); ++i) {
        reached = std::max(changes_[i].zone.resolve(wall).first, changes_[i].from);
        if (i + 1 < changes_.size() && reached < changes_[i + 1].from) {
            break;
        }
    }
    return reached;
}

CivilDay ZoneHistory::day_of(CivilDate date) const {
    return {date, first_showing(WallTime{date}), first_showing(WallTime{date + one_day})};
}

std::vector<CivilDay> ZoneHistory::days(Interval window) const {
    std::vector<CivilDay> result;
    if (window.from >= window.to) {
        return result;
    }
    CivilDay day = day_of(date_at(window.from));
    while (day.from < window.to) {
        if (day.length().count() > 0) {  // a date skipped by flying east over the date line
            result.push_back(day);
        }
        day = {day.date + one_day, day.to, first_showing(WallTime{day.date + 2 * one_day})};
    }
    return result;
}

Interval ZoneHistory::clock_window(const CivilDay& day, std::chrono::seconds begin,
                                   std::chrono::seconds end) const {
    const Instant from = begin.count() == 0 ? day.from : first_showing(WallTime{day.date} + begin);
    const Instant to = end >= one_day ? day.to : first_showing(WallTime{day.date} + end);
    return intersection({from, std::max(from, to)}, day.interval());
}

std::vector<Zone> ZoneHistory::zones_in(Interval window) const {
    std::vector<Zone> result;
    for (std::size_t i = 0; i < changes_.size(); ++i) {
        const bool begun = changes_[i].from < window.to;
        const bool over = i + 1 < changes_.size() && changes_[i + 1].from <= window.from;
        if (begun && !over &&
            std::find(result.begin(), result.end(), changes_[i].zone) == result.end()) {
            result.push_back(changes_[i].zone);
        }
    }
    return result;
}

std::vector<CivilDate> ZoneHistory::travel_days(Interval window) const {
    std::vector<CivilDate> result;
    for (std::size_t i = 1; i < changes_.size(); ++i) {
        if (window.contains(changes_[i].from)) {
            result.push_back(date_at(changes_[i].from));
        }
    }
    return result;
}

}  // namespace tracewright
