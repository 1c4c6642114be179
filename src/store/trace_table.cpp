#include "store/trace_table.hpp"

#include "store/stored_column.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace tracewright {

namespace {

std::int64_t number_of(UtcDay day) {
    return day.time_since_epoch().count();
}

UtcDay day_of_number(std::int64_t number) {
    return UtcDay{std::chrono::days{number}};
}

}  // namespace

TraceTable::TraceTable(Database& database)
    : database_(database),
      wears_(database,
             "SELECT id, sealed_source, start, start_told, ended, planned_end, interval_s, "
             "changed_by_hand_at FROM wear WHERE client = ? ORDER BY start, id"),
      add_wear_(database,
                "INSERT INTO wear(client, sealed_source, start, start_told, ended, planned_end, "
                "interval_s) VALUES (?, ?, ?, ?, ?, ?, ?)"),
      change_wear_(database,
                   "UPDATE wear SET start = ?2, start_told = ?3, ended = ?4, planned_end = ?5, "
                   "interval_s = ?6, changed_by_hand_at = ?7 WHERE id = ?1"),
      remove_wear_(database, "DELETE FROM wear WHERE id = ?"),
      blocks_(database,
              "SELECT day, block FROM trace_block WHERE client = ? AND wear = ? AND day BETWEEN ? "
              "AND ? ORDER BY day"),
      count_(database,
             "SELECT coalesce(sum(readings), 0) FROM trace_block WHERE client = ? AND wear = ? "
             "AND day BETWEEN ? AND ?"),
      block_(database, "SELECT block FROM trace_block WHERE client = ? AND wear = ? AND day = ?"),
      put_block_(
          database,
          "INSERT INTO trace_block(client, wear, day, readings, block) VALUES (?, ?, ?, ?, ?) "
          "ON CONFLICT DO UPDATE SET readings = excluded.readings, block = excluded.block"),
      remove_block_(database, "DELETE FROM trace_block WHERE client = ? AND wear = ? AND day = ?"),
      reach_(database, "UPDATE wear SET last_at = max(coalesce(last_at, ?2), ?2) WHERE id = ?1") {}

std::vector<WearRow> TraceTable::wears(std::int64_t client) {
    std::vector<WearRow> rows;
    for (wears_.with(client); wears_.step();) {
        WearRow row;
        row.id = wears_.integer(0);
        const auto source = wears_.blob(1);
        row.sealed_source.assign(source.begin(), source.end());
        row.start = instant(wears_.integer(2));
        row.start_told = wears_.integer(3) != 0;
        row.end = static_cast<WearEnd>(wears_.integer(4));
        row.planned_end = instant(wears_.optional_integer(5));
        row.interval = std::chrono::seconds{wears_.integer(6)};
        row.changed_by_hand_at = instant(wears_.optional_integer(7));
        rows.push_back(std::move(row));
    }
    return rows;
}

std::int64_t TraceTable::add_wear(std::int64_t client, const WearRow& wear) {
    add_wear_
        .with(client, wear.sealed_source, seconds(wear.start), int{wear.start_told},
              static_cast<int>(wear.end), seconds(wear.planned_end), wear.interval.count())
        .run();
    return database_.last_row();
}

void TraceTable::change_wear(const WearRow& wear) {
    change_wear_
        .with(wear.id, seconds(wear.start), int{wear.start_told}, static_cast<int>(wear.end),
              seconds(wear.planned_end), wear.interval.count(), seconds(wear.changed_by_hand_at))
        .run();
}

void TraceTable::remove_wear(std::int64_t wear) {
    remove_wear_.with(wear).run();
}

std::vector<Reading> TraceTable::readings(std::int64_t client, std::int64_t wear,
                                          std::optional<Interval> window) {
    std::vector<Reading> readings;
    std::int64_t first = std::numeric_limits<std::int64_t>::min();
    std::int64_t last = std::numeric_limits<std::int64_t>::max();
    if (window) {
        first = number_of(utc_day_of(window->from));
        last = number_of(utc_day_of(window->to));
    }
    count_.with(client, wear, first, last).step();
    readings.reserve(static_cast<std::size_t>(count_.integer(0)));
    count_.with();
    for (blocks_.with(client, wear, first, last); blocks_.step();) {
        const auto done =
            unpack_trace_block(blocks_.blob(1), day_of_number(blocks_.integer(0)), readings);
        if (!done) {
            throw std::runtime_error(done.error());
        }
    }
    if (window) {
        std::erase_if(readings, [&](const Reading& r) { return !window->contains(r.at); });
    }
    return readings;
}

std::optional<Bytes> TraceTable::block(std::int64_t client, std::int64_t wear, UtcDay day) {
    block_.with(client, wear, number_of(day));
    if (!block_.step()) {
        return std::nullopt;
    }
    const auto bytes = block_.blob(0);
    Bytes copy(bytes.begin(), bytes.end());
    block_.with();
    return copy;
}

void TraceTable::put_block(std::int64_t client, std::int64_t wear, UtcDay day, std::size_t readings,
                           std::span<const std::uint8_t> block) {
    put_block_.with(client, wear, number_of(day), static_cast<std::int64_t>(readings), block).run();
}

void TraceTable::remove_block(std::int64_t client, std::int64_t wear, UtcDay day) {
    remove_block_.with(client, wear, number_of(day)).run();
}

void TraceTable::reach(std::int64_t wear, Instant at) {
    reach_.with(wear, seconds(at)).run();
}

std::optional<Instant> TraceTable::last_reading(std::int64_t client) {
    Statement last(database_, "SELECT max(last_at) FROM wear WHERE client = ?");
    const bool any = last.with(client).step() && !last.is_null(0);
    return any ? std::optional(instant(last.integer(0))) : std::nullopt;
}

std::map<std::int64_t, Instant> TraceTable::last_readings() {
    std::map<std::int64_t, Instant> last;
    Statement wears(database_, "SELECT client, last_at FROM wear WHERE last_at IS NOT NULL");
    while (wears.step()) {
        const Instant at = instant(wears.integer(1));
        Instant& known = last.try_emplace(wears.integer(0), at).first->second;
        known = std::max(known, at);
    }
    return last;
}

std::vector<std::string> TraceTable::faults() {
    std::vector<std::string> faults;
    std::map<std::int64_t, Instant> last;
    Statement all(
        database_,
        "SELECT client, wear, day, readings, block FROM trace_block ORDER BY client, wear, "
        "day");
    while (all.step()) {
        std::vector<Reading> readings;
        const auto done = unpack_trace_block(all.blob(4), day_of_number(all.integer(2)), readings);
        const auto where = fmt::format("client {}, wear {}, day {}: ", all.integer(0),
                                       all.integer(1), all.integer(2));
        if (!done) {
            faults.push_back(where + done.error());
        } else if (readings.size() != static_cast<std::size_t>(all.integer(3))) {
            faults.push_back(where + "found another number of readings than the row says");
        } else {
            last[all.integer(1)] = readings.back().at;
        }
    }
    Statement wears(database_, "SELECT id, last_at FROM wear");
    while (faults.empty() && wears.step()) {
        const auto found = last.find(wears.integer(0));
        if (found == last.end() || instant(wears.integer(1)) != found->second) {
            faults.push_back(fmt::format("wear {}: found another last reading than the wear says",
                                         wears.integer(0)));
        }
    }
    return faults;
}

}  // namespace tracewright
