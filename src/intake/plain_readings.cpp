#include "intake/plain_readings.hpp"

#include "intake/wall_order.hpp"
#include "trace/wear.hpp"

#include <vector>

namespace tracewright {

namespace {

constexpr Instant rows_begin{std::chrono::sys_days{std::chrono::year{2000} / 1 / 1}};
constexpr Instant rows_end{std::chrono::sys_days{std::chrono::year{2200} / 1 / 1}};

// What each row's clock showed.
std::vector<WallTime> walls_of(const PlainRows& rows) {
    std::vector<WallTime> walls;
    walls.reserve(rows.rows.size());
    for (std::size_t i = 0; i < rows.rows.size(); ++i) {
        walls.push_back(rows.wall(i));
    }
    return walls;
}

// Moves wall times to moments in place; false at the first that needs the careful way: a time of
// the night of a clock change has its remark.
bool placed_plainly(PlainRows& plain, const ZoneHistory& zones, std::optional<WrittenOffset> told) {
    if (told) {
        for (Reading& reading : plain.rows) {
            reading.at -= told->east;
        }
        // Without a zone the clock that the rows show stands for it.
        return !zones.zone_at(Instant{}).is_floating();
    }
    const bool rules =
        zones.zones_in({rows_begin, rows_end}).size() > 1 || zones.zone_at(rows_begin).has_rules();
    if (!rules) {
        const std::chrono::seconds offset = zones.zone_at(rows_begin).offset_at(rows_begin);
        for (Reading& reading : plain.rows) {
            reading.at -= offset;
        }
        return true;
    }
    if (clock_changes_between(plain.wall(0), plain.wall(plain.rows.size() - 1), zones) &&
        clock_did_not_change(walls_of(plain), zones)) {
        return false;
    }
    WallResolver resolver(zones);
    for (std::size_t i = 0; i < plain.rows.size(); ++i) {
        const WallResolution found = resolver.at(plain.wall(i));
        if (found.kind != WallResolution::Kind::unique) {
            return false;
        }
        plain.rows[i].at = found.first;
    }
    return true;
}

}  // namespace

bool made_readings(PlainRows& plain, const ReadingPlan& plan, const IntakeOptions& options) {
    const GlucoseUnit unit = plan.unit;
    const auto titled = plan.shape.offset_by_title;
    std::vector<Reading>& rows = plain.rows;
    const bool mg = unit == GlucoseUnit::mg_per_dl;
    const std::int32_t least = mg ? 2000 : 110;
    const std::int32_t most = mg ? 60000 : 3330;
    // Implausible values have their remark; so have rows repeated or out of order.
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::int32_t level = rows[i].hundredths();
        if (level < least || level > most || (i > 0 && rows[i].at <= rows[i - 1].at)) {
            return false;
        }
    }
    const auto told = titled ? plan.shape.columns[*titled].offset : std::nullopt;
    if (rows.empty() || !placed_plainly(plain, options.zones, told)) {
        return false;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i > 0 && rows[i].at <= rows[i - 1].at) {
            return false;
        }
        rows[i] = Reading{rows[i].at, Glucose{rows[i].hundredths(), unit}, std::chrono::seconds{1}};
    }
    const bool too_late = options.as_of && rows.back().at > *options.as_of;
    if (too_late || rows.front().at < rows_begin) {
        return false;
    }
    set_intervals(rows);
    return true;
}

}  // namespace tracewright
