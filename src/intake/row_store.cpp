#include "intake/row_store.hpp"

#include "intake/wall_order.hpp"
#include "intake/wall_text.hpp"
#include "trace/wear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

namespace tracewright {

namespace {

using std::chrono::seconds;

constexpr std::size_t future_share = 20;       // one row in twenty: the clock was wrong, not a row
constexpr std::chrono::hours usual_rising{7};  // where no time of day is written; ours, no source
constexpr Instant first_believed{std::chrono::sys_days{std::chrono::year{2000} / 1 / 1}};

// Where LOW or HIGH bears no number and the file names none. Common practice, no source.
constexpr std::int64_t usual_low[] = {4000, 220};
constexpr std::int64_t usual_high[] = {40000, 2220};

// What glucose can be (interchange 4.4 row 15): 20 to 600 mg/dL, 1.1 to 33.3 mmol/L.
bool implausible(const RowGlucose& glucose) {
    const bool mg = glucose.unit == GlucoseUnit::mg_per_dl;
    return glucose.hundredths < (mg ? 2000 : 110) || glucose.hundredths > (mg ? 60000 : 3330);
}

std::string level_text(const RowGlucose& glucose) {
    const std::string level = fmt::format("{}", static_cast<double>(glucose.hundredths) / 100);
    return glucose.limit == Limit::below ? "LOW" : glucose.limit == Limit::above ? "HIGH" : level;
}

bool same_level(const RowGlucose& a, const RowGlucose& b) {
    return a.hundredths == b.hundredths && a.unit == b.unit && a.limit == b.limit;
}

}  // namespace

void RowStore::add(ReadRow row) {
    for (RowNote& remark : row.remarks) {
        ledger_.remark(std::move(remark));
    }
    if (row.state == ReadRow::State::settled) {
        if (!row.note || row.note->code.empty()) {
            ledger_.count(row.note ? row.note->fate : Fate::not_data);
        } else {
            ledger_.note(std::move(*row.note));
        }
        return;
    }
    Timed timed{};
    timed.sensor = row.sensor;
    sensors_ = std::max(sensors_, row.sensor + 1);
    timed.line = row.line;
    timed.time_column = row.time_column;
    timed.wall = row.wall;
    timed.told = row.instant.has_value();
    timed.offset = row.offset;
    timed.clock_told = row.clock_told;
    timed.at = row.instant.value_or(Instant{row.wall.time_since_epoch()});
    timed.glucose = row.glucose;
    timed.first_entry = static_cast<std::uint32_t>(entries_.size());
    timed.entries = static_cast<std::uint32_t>(row.entries.size());
    if (row.glucose && row.glucose->hundredths > 0 && row.glucose->limit != Limit::none) {
        (row.glucose->limit == Limit::below ? low_limit_ : high_limit_) = row.glucose->hundredths;
    }
    entries_.insert(entries_.end(), std::make_move_iterator(row.entries.begin()),
                    std::make_move_iterator(row.entries.end()));
    rows_.push_back(timed);
}

void RowStore::drop(Timed& row, const char* code, std::string found, std::string expected) {
    row.dropped = true;
    ledger_.note(
        {row.line, row.time_column, Fate::rejected, code, std::move(found), std::move(expected)});
}

// Rows tell how far their clock is from UTC, but no zone is told: days and nights are cut by the
// clock that the rows show, or the zone is asked for. True if it is asked for.
bool RowStore::zone_is_asked_for(Intake& intake) {
    const auto told = [](const Timed& row) { return row.told; };
    if (!options_.zones.zone_at(Instant{}).is_floating() || std::ranges::none_of(rows_, told)) {
        return false;
    }
    const auto first =
        std::ranges::find_if(rows_, [](const Timed& row) { return row.offset.has_value(); });
    intake.in_utc = first == rows_.end();
    if (options_.without_zone == WithoutZone::ask) {
        intake.questions.push_back(
            {"zone",
             fmt::format("Times are told {}, but no time zone is told for the client. Where does "
                         "the client live?",
                         intake.in_utc ? "in UTC" : "with their distance from UTC"),
             "", "the client's time zone"});
        return true;
    }
    if (intake.in_utc) {
        return false;
    }
    intake.stands_at = *first->offset;
    for (Timed& row : rows_) {
        if (row.told) {
            row.at += *first->offset;
        }
    }
    return false;
}

// Wall times become moments: by zone and order, or at one offset where the device's clock slept.
// Each sensor has its own order and clock.
void RowStore::place(Intake& intake, std::uint32_t sensor) {
    std::vector<WallTime> walls;
    std::vector<std::size_t> of_row;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (!rows_[i].told && rows_[i].sensor == sensor) {
            walls.push_back(rows_[i].wall);
            of_row.push_back(i);
        }
    }
    if (walls.empty()) {
        return;
    }
    ZoneHistory zones = options_.zones;
    std::vector<WallTime> regular;
    for (const std::size_t i : of_row) {
        if (rows_[i].glucose) {
            regular.push_back(rows_[i].wall);
        }
    }
    if (clock_did_not_change(regular, zones)) {
        const WallTime first = *std::min_element(walls.begin(), walls.end());
        const Instant at = zones.resolve(first).first;
        zones = ZoneHistory{Zone::fixed(zones.zone_at(at).offset_at(at))};
        intake.clock_did_not_change = true;
        ledger_.remark({0, 0, Fate::stored, "clock_did_not_change",
                        "a regular grid through the night of a clock change",
                        "read at one offset, " + zones.zone_at(at).name()});
    }
    const std::vector<PlacedTime> placed_times = placed(walls, zones);
    for (std::size_t n = 0; n < of_row.size(); ++n) {
        Timed& row = rows_[of_row[n]];
        row.at = placed_times[n].at;
        row.uncertain = placed_times[n].kind == PlacedTime::Kind::alone;
        if (placed_times[n].kind == PlacedTime::Kind::skipped) {
            drop(row, "skipped_hour", wall_text(row.wall),
                 "a time that the clock showed: it was set forward over this one");
        } else if (placed_times[n].kind != PlacedTime::Kind::unique) {
            ledger_.remark({row.line, row.time_column, Fate::stored, "repeated_hour",
                            wall_text(row.wall),
                            row.uncertain ? "told apart by nothing: the first showing is taken"
                                          : "told apart by the order of the file"});
        }
    }
}

void RowStore::check_years() {
    for (Timed& row : rows_) {
        if (!row.dropped && row.at < first_believed) {
            drop(row, "before_2000", wall_text(row.wall), "a time from 2000 on");
        }
    }
}

// True if so many rows lie in the future that the clock must have been wrong: asked, nothing
// stored.
bool RowStore::too_many_in_the_future(Intake& intake) {
    if (!options_.as_of) {
        return false;
    }
    const auto future = [&](const Timed& row) { return !row.dropped && row.at > *options_.as_of; };
    const auto count = static_cast<std::size_t>(std::count_if(rows_.begin(), rows_.end(), future));
    if (count > 1 && future_share * count > rows_.size()) {
        const auto first = std::find_if(rows_.begin(), rows_.end(), future);
        intake.questions.push_back(
            {"clock",
             fmt::format(
                 "{} of {} rows lie after the present, the first on line {} ({}). Was the device's "
                 "clock wrong?",
                 count, rows_.size(), first->line, wall_text(first->wall)),
             "the clock was wrong", "--as-of"});
        return true;
    }
    for (Timed& row : rows_) {
        if (future(row)) {
            drop(row, "future_time", wall_text(row.wall), "a time that has been");
        }
    }
    return false;
}

void RowStore::limits_without_a_number() {
    std::size_t assumed = 0;
    for (Timed& row : rows_) {
        if (!row.glucose || row.glucose->limit == Limit::none) {
            continue;
        }
        const bool below = row.glucose->limit == Limit::below;
        if (row.glucose->hundredths == 0) {
            const auto unit = static_cast<std::size_t>(row.glucose->unit);
            const auto& in_file = below ? low_limit_ : high_limit_;
            row.glucose->hundredths = in_file.value_or(below ? usual_low[unit] : usual_high[unit]);
            assumed += in_file ? 0U : 1U;
        }
        ledger_.remark({row.line, row.glucose->column, Fate::stored, "beyond_the_limit",
                        level_text(*row.glucose),
                        "counted in the bands; the level itself is not known"});
    }
    if (assumed > 0) {
        ledger_.remark(
            {0, 0, Fate::stored, "limit_assumed",
             fmt::format("{} readings LOW or HIGH without a number", assumed),
             "40 and 400 mg/dL (2.2 and 22.2 mmol/L) taken as the limits: common practice, "
             "no source"});
    }
}

// Two sensors at once report side by side. Devices that show one sensor take turns often, and one
// hardly reports while the other does.
bool RowStore::devices_take_turns() const {
    constexpr std::size_t often = 4;
    std::vector<const Timed*> in_time;
    for (const Timed& row : rows_) {
        if (row.glucose && !row.dropped) {
            in_time.push_back(&row);
        }
    }
    std::ranges::stable_sort(in_time, {}, &Timed::at);
    std::size_t turns = 0;
    std::size_t side_by_side = 0;
    for (std::size_t i = 1; i < in_time.size(); ++i) {
        if (in_time[i]->sensor != in_time[i - 1]->sensor) {
            ++turns;
            // Both of one moment, or back at once to the one before.
            const bool back =
                i + 1 < in_time.size() && in_time[i + 1]->sensor == in_time[i - 1]->sensor;
            side_by_side += in_time[i]->at == in_time[i - 1]->at || back ? 1U : 0U;
        }
    }
    return turns >= often * sensors_ && 2 * side_by_side < turns;
}

void RowStore::join_devices() {
    for (Timed& row : rows_) {
        row.sensor = 0;
    }
    ledger_.remark({0, 0, Fate::stored, "devices_take_turns",
                    fmt::format("{} devices that take turns", sensors_),
                    "one sensor that they show: its readings are kept together"});
    sensors_ = 1;
}

std::vector<Reading> RowStore::readings_of(std::uint32_t sensor, Intake& intake) {
    std::vector<Reading> readings;
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (rows_[i].glucose && !rows_[i].dropped && rows_[i].sensor == sensor) {
            order.push_back(i);
        }
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return rows_[a].at < rows_[b].at; });
    for (std::size_t begin = 0; begin < order.size();) {
        std::size_t end = begin + 1;
        while (end < order.size() && rows_[order[end]].at == rows_[order[begin]].at) {
            ++end;
        }
        const bool agree =
            std::all_of(order.begin() + static_cast<std::ptrdiff_t>(begin),
                        order.begin() + static_cast<std::ptrdiff_t>(end), [&](std::size_t i) {
                            return same_level(*rows_[i].glucose, *rows_[order[begin]].glucose);
                        });
        for (std::size_t k = begin; k < end; ++k) {
            Timed& row = rows_[order[k]];
            const auto seen = std::find_if(
                order.begin() + static_cast<std::ptrdiff_t>(begin),
                order.begin() + static_cast<std::ptrdiff_t>(k),
                [&](std::size_t i) { return same_level(*rows_[i].glucose, *row.glucose); });
            const bool again = seen != order.begin() + static_cast<std::ptrdiff_t>(k);
            row.fate = again ? Fate::duplicate : agree ? Fate::stored : Fate::conflict;
            const RowGlucose& g = *row.glucose;
            const Glucose level{static_cast<std::int32_t>(g.hundredths), g.unit};
            if (row.fate == Fate::stored) {
                if (implausible(g)) {
                    ledger_.remark(
                        {row.line, g.column, Fate::stored, "implausible", level_text(g),
                         "20 to 600 mg/dL (1.1 to 33.3 mmol/L); out of the measures until "
                         "confirmed"});
                }
                readings.emplace_back(row.at, level, seconds{1}, g.limit,
                                      implausible(g) && g.limit == Limit::none);
            } else if (row.fate == Fate::conflict) {
                intake.held.push_back({row.at, level, row.line});
            }
        }
        begin = end;
    }
    set_intervals(readings);
    return readings;
}

void RowStore::tell_readings_apart(Intake& intake) {
    std::vector<std::vector<Reading>> sensors;
    for (std::uint32_t sensor = 0; sensor < sensors_; ++sensor) {
        if (auto readings = readings_of(sensor, intake); !readings.empty()) {
            sensors.push_back(std::move(readings));
        }
    }
    std::ranges::stable_sort(sensors, {}, [](const auto& readings) { return readings.front().at; });
    if (!sensors.empty()) {
        intake.readings = std::move(sensors.front());
        sensors.erase(sensors.begin());
    }
    intake.other_sensors = std::move(sensors);
}

Instant RowStore::moment_of(const OwnTime& time, bool later) const {
    if (time.offset && !options_.zones.zone_at(Instant{}).is_floating()) {
        return Instant{time.wall.time_since_epoch()} - *time.offset;
    }
    const WallResolution found = options_.zones.resolve(time.wall);
    return later ? found.second : found.first;
}

// False if the entry began when the clock never showed that time, which is told.
bool RowStore::place_entry(const Timed& row, RowEntry& told) {
    DiaryEntry& entry = told.what;
    const bool own = told.begin.has_value();
    const WallTime begin = own ? told.begin->wall : row.wall;
    entry.at = own ? moment_of(*told.begin, false) : row.at;
    entry.written = own || !row.told ? begin : options_.zones.wall_time(row.at);
    const bool told_clock = told.clock_told && (own || row.clock_told);
    entry.time_uncertain = (!own && row.uncertain) || (!told_clock && entry.kind != DiaryKind::lab);
    if (own && !told.begin->offset) {
        const auto kind = options_.zones.resolve(begin).kind;
        entry.time_uncertain = entry.time_uncertain || kind == WallResolution::Kind::repeated;
        if (kind == WallResolution::Kind::skipped) {
            ledger_.remark({row.line, row.time_column, Fate::stored, "skipped_hour",
                            wall_text(begin),
                            "a time that the clock showed: what was told of it is not kept"});
            return false;
        }
    }
    if (told.end) {
        const Instant by_clock = moment_of(*told.end, true);
        entry.until = by_clock > entry.at ? by_clock : entry.at + (told.end->wall - begin);
    } else if (entry.kind == DiaryKind::movement && entry.number_unit == "min" && entry.number) {
        entry.until = entry.at + seconds{std::llround(*entry.number * 60)};
    } else if (entry.kind == DiaryKind::sleep && entry.number_unit == "h" && entry.number) {
        // Hours slept are written in the morning after: the night ends here.
        const auto morning = std::chrono::floor<std::chrono::days>(row.wall) + usual_rising;
        entry.until = row.clock_told ? row.at : options_.zones.resolve(morning).first;
        entry.at = *entry.until - seconds{std::llround(*entry.number * 3600)};
        entry.time_uncertain = true;
    }
    return true;
}

void RowStore::tell_entries_apart(Intake& intake) {
    // All that an entry says: of two that differ in anything neither is the other again.
    const auto key = [](const DiaryEntry& e) {
        const Amount carbohydrate = e.carbohydrate_g.value_or(Amount{-1, 0, false});
        return std::tuple{e.at,
                          e.until,
                          e.kind,
                          e.text,
                          e.number,
                          e.number_unit,
                          e.slot,
                          e.portion,
                          e.energy_kcal,
                          e.protein_g,
                          e.fat_g,
                          e.fibre_g,
                          e.glucose ? e.glucose->hundredths : -1,
                          e.glucose ? static_cast<int>(e.glucose->unit) : -1,
                          carbohydrate.value,
                          carbohydrate.half_width,
                          carbohydrate.estimated};
    };
    std::map<decltype(key(DiaryEntry{})), bool> seen;
    for (Timed& row : rows_) {
        if (row.dropped || row.entries == 0) {
            continue;
        }
        bool any_new = false;
        std::uint32_t placed = 0;
        for (std::uint32_t k = 0; k < row.entries; ++k) {
            DiaryEntry& entry = entries_[row.first_entry + k].what;
            if (!place_entry(row, entries_[row.first_entry + k])) {
                continue;
            }
            ++placed;
            entry.source = intake.file;
            entry.source_line = static_cast<int>(row.line);
            if (seen.emplace(key(entry), true).second) {
                any_new = true;
                intake.diary.push_back(entry);
            }
        }
        if (!row.glucose && placed == 0) {
            drop(row, "skipped_hour", "nothing but times that the clock never showed",
                 "a time that the clock showed: it was set forward over this one");
        } else if (!row.glucose) {
            row.fate = any_new ? Fate::stored : Fate::duplicate;
        } else if (row.fate == Fate::duplicate && any_new) {
            row.fate = Fate::stored;
        }
    }
    std::stable_sort(intake.diary.begin(), intake.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
}

void RowStore::count_fates() {
    for (const Timed& row : rows_) {
        if (row.dropped) {
            continue;
        }
        const std::uint32_t column = row.glucose ? row.glucose->column : row.time_column;
        if (row.fate == Fate::duplicate) {
            ledger_.note({row.line, column, Fate::duplicate, "duplicate_row",
                          "the same time and value again (" + wall_text(row.wall) + ")",
                          "each time once"});
        } else if (row.fate == Fate::conflict) {
            ledger_.note(
                {row.line, column, Fate::conflict, "other_value", level_text(*row.glucose),
                 "one value at " + wall_text(row.wall) + ": both are held, none is counted"});
        } else {
            ledger_.count(row.fate);
        }
    }
}

void RowStore::settle(Intake& intake) {
    const bool zone_asked = zone_is_asked_for(intake);
    for (std::uint32_t sensor = 0; sensor < sensors_; ++sensor) {
        place(intake, sensor);
    }
    check_years();
    if (too_many_in_the_future(intake) || zone_asked) {
        const auto open =
            std::count_if(rows_.begin(), rows_.end(), [](const Timed& r) { return !r.dropped; });
        ledger_.count(Fate::question, static_cast<std::uint64_t>(open));
        intake.ledger = std::move(ledger_);
        return;
    }
    limits_without_a_number();
    if (sensors_ > 1 && !sensors_certain_ && devices_take_turns()) {
        join_devices();
    }
    tell_readings_apart(intake);
    tell_entries_apart(intake);
    count_fates();
    ledger_.in_order_of_lines();
    intake.ledger = std::move(ledger_);
}

}  // namespace tracewright
