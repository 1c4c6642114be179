#include "store/import_table.hpp"

#include "store/diary_document.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>

namespace tracewright {

namespace {

constexpr auto near_enough_to_join = std::chrono::hours{48};

// Of all readings of a file that has some; those of its first sensor begin first.
Interval span_of(const BroughtIn& file) {
    Instant last = file.readings.back().at;
    for (const auto& sensor : file.other_sensors) {
        last = std::max(last, sensor.back().at);
    }
    return {file.readings.front().at - near_enough_to_join, last + near_enough_to_join};
}

}  // namespace

ImportTable::ImportTable(Database& database, const Seal& seal, TraceTable& trace, DiaryTable& diary)
    : database_(database),
      seal_(seal),
      trace_(trace),
      diary_(diary),
      add_(database,
           "INSERT INTO import(client, at, coach, sealed_source, rows_stored, "
           "rows_duplicate, rows_conflict, rows_rejected) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"),
      imports_(database,
               "SELECT id, at, coach, sealed_source, rows_stored, rows_duplicate, rows_conflict, "
               "rows_rejected FROM import WHERE client = ? ORDER BY id"),
      with_readings_(database,
                     "SELECT max(at) FROM import WHERE client = ? AND EXISTS "
                     "(SELECT 1 FROM wear_before WHERE wear_before.import = import.id)"),
      add_held_(database,
                "INSERT INTO held_reading(import, client, at, hundredths, unit, line) "
                "VALUES (?, ?, ?, ?, ?, ?)"),
      held_(database,
            "SELECT at, hundredths, unit, line FROM held_reading WHERE client = ? "
            "ORDER BY at, import, line"),
      add_block_before_(
          database,
          "INSERT INTO block_before(import, wear, day, readings, block) "
          "SELECT ?1, ?3, ?4, "
          "(SELECT readings FROM trace_block WHERE client = ?2 AND wear = ?3 AND day = ?4), "
          "(SELECT block FROM trace_block WHERE client = ?2 AND wear = ?3 AND day = ?4) "
          "ON CONFLICT DO NOTHING"),
      add_wear_before_(
          database,
          "INSERT INTO wear_before(import, wear, existed, start, start_told, interval_s, last_at) "
          "SELECT ?1, ?2, ?3, (SELECT start FROM wear WHERE id = ?2), "
          "(SELECT start_told FROM wear WHERE id = ?2), "
          "(SELECT interval_s FROM wear WHERE id = ?2), "
          "(SELECT last_at FROM wear WHERE id = ?2) ON CONFLICT DO NOTHING") {}

ImportPlan ImportTable::plan(std::int64_t client, BroughtIn file, WhoseFile whose) {
    std::vector<KnownWear> known;
    if (!file.readings.empty()) {
        const Interval span = span_of(file);
        for (const WearRow& row : trace_.wears(client)) {
            Wear wear;
            wear.start = row.start;
            wear.interval = row.interval;
            wear.readings = trace_.readings(client, row.id, span);
            if (!wear.empty()) {
                known.push_back({row.id, std::move(wear)});
            }
        }
    }
    std::set<std::string> met;  // an entry twice in one file is known the second time
    return import_plan(
        std::move(file), known,
        [&](const DiaryEntry& entry) {
            return !met.insert(sameness_of(entry)).second || diary_.has(client, entry);
        },
        whose);
}

std::int64_t ImportTable::wear_for(std::int64_t client, std::int64_t import,
                                   const std::string& place,
                                   const ImportPlan::PlannedWear& planned) {
    if (!planned.joins) {
        WearRow row;
        row.sealed_source = seal_.sealed(planned.wear.source, place + " wear source");
        row.start = planned.wear.start;
        row.start_told = planned.wear.start_told;
        row.end = planned.wear.end;
        row.planned_end = planned.wear.planned_end;
        row.interval = planned.wear.interval;
        const std::int64_t wear = trace_.add_wear(client, row);
        add_wear_before_.with(import, wear, 0).run();
        return wear;
    }
    add_wear_before_.with(import, *planned.joins, 1).run();
    for (WearRow row : trace_.wears(client)) {
        if (row.id == *planned.joins && !row.start_told && planned.wear.start < row.start) {
            row.start = planned.wear.start;
            trace_.change_wear(row);
        }
    }
    return *planned.joins;
}

void ImportTable::merge(std::int64_t client, std::int64_t import, std::int64_t wear,
                        std::span<const Reading> fresh) {
    for (auto begin = fresh.begin(); begin != fresh.end();) {
        const UtcDay day = utc_day_of(begin->at);
        const auto end = std::find_if(begin, fresh.end(), [&](const Reading& reading) {
            return utc_day_of(reading.at) != day;
        });
        add_block_before_.with(import, client, wear, day.time_since_epoch().count()).run();
        std::vector<Reading> readings;
        if (const auto block = trace_.block(client, wear, day)) {
            if (const auto done = unpack_trace_block(*block, day, readings); !done) {
                throw std::runtime_error(done.error());
            }
        }
        const auto middle = static_cast<std::ptrdiff_t>(readings.size());
        readings.insert(readings.end(), begin, end);
        std::inplace_merge(readings.begin(), readings.begin() + middle, readings.end(),
                           [](const Reading& a, const Reading& b) { return a.at < b.at; });
        trace_.put_block(client, wear, day, readings.size(), trace_block(day, readings));
        begin = end;
    }
}

std::int64_t ImportTable::store(std::int64_t client, const std::string& place,
                                const std::string& source, const ImportPlan& plan,
                                const Acting& acting) {
    // Only the file's own name: folders tell of people too, and of machines.
    const std::string name = std::filesystem::path(source).filename().string();
    add_.with(client, acting.at.time_since_epoch().count(), acting.coach,
              seal_.sealed(name, place + " import source"),
              static_cast<std::int64_t>(plan.rows_stored),
              static_cast<std::int64_t>(plan.rows_duplicate),
              static_cast<std::int64_t>(plan.rows_conflict),
              static_cast<std::int64_t>(plan.rows_rejected))
        .run();
    const std::int64_t import = database_.last_row();
    for (const ImportPlan::PlannedWear& planned : plan.wears) {
        const std::int64_t wear = wear_for(client, import, place, planned);
        merge(client, import, wear, planned.wear.readings);
        trace_.reach(wear, planned.wear.readings.back().at);
    }
    for (const DiaryEntry& entry : plan.entries) {
        diary_.add(client, import, place, entry);
    }
    for (const BroughtIn::Held& held : plan.held) {
        add_held_
            .with(import, client, held.at.time_since_epoch().count(),
                  std::int64_t{held.value.hundredths}, static_cast<int>(held.value.unit),
                  std::int64_t{held.line})
            .run();
    }
    return import;
}

std::vector<ImportRecord> ImportTable::imports(std::int64_t client, const std::string& place) {
    std::vector<ImportRecord> records;
    for (imports_.with(client); imports_.step();) {
        ImportRecord record;
        record.id = imports_.integer(0);
        record.at = Instant{std::chrono::seconds{imports_.integer(1)}};
        record.coach = imports_.integer(2);
        const auto source = seal_.opened(imports_.blob(3), place + " import source");
        if (!source) {
            throw std::runtime_error(source.error());
        }
        record.source = *source;
        record.rows_stored = static_cast<std::uint64_t>(imports_.integer(4));
        record.rows_duplicate = static_cast<std::uint64_t>(imports_.integer(5));
        record.rows_conflict = static_cast<std::uint64_t>(imports_.integer(6));
        record.rows_rejected = static_cast<std::uint64_t>(imports_.integer(7));
        records.push_back(std::move(record));
    }
    return records;
}

std::optional<Instant> ImportTable::readings_brought_in_at(std::int64_t client) {
    std::optional<Instant> at;
    for (with_readings_.with(client); with_readings_.step();) {
        if (const auto seconds = with_readings_.optional_integer(0)) {
            at = Instant{std::chrono::seconds{*seconds}};
        }
    }
    return at;
}

std::vector<BroughtIn::Held> ImportTable::held(std::int64_t client) {
    std::vector<BroughtIn::Held> held;
    for (held_.with(client); held_.step();) {
        held.push_back({Instant{std::chrono::seconds{held_.integer(0)}},
                        Glucose{static_cast<std::int32_t>(held_.integer(1)),
                                static_cast<GlucoseUnit>(held_.integer(2))},
                        static_cast<std::uint32_t>(held_.integer(3))});
    }
    return held;
}

std::vector<std::string> ImportTable::what_rests_on(std::int64_t client,
                                                    const ImportRecord& import) {
    std::vector<std::string> resting;
    Statement changed(database_,
                      "SELECT count(*) FROM wear JOIN wear_before ON wear_before.wear = wear.id "
                      "WHERE wear_before.import = ? AND wear.changed_by_hand_at >= ?");
    changed.with(import.id, import.at.time_since_epoch().count()).step();
    if (changed.integer(0) > 0) {
        resting.push_back(fmt::format(
            "{} wear(s) of this import were changed by hand since: how they ended or sat",
            changed.integer(0)));
    }
    Statement kept(database_, "SELECT count(*) FROM finding WHERE client = ? AND last_import >= ?");
    kept.with(client, import.id).step();
    if (kept.integer(0) > 0) {
        resting.push_back(fmt::format("{} kept finding(s) were drawn from it", kept.integer(0)));
    }
    Statement shown(database_,
                    "SELECT count(*) FROM meal_photo JOIN diary_entry ON diary_entry.id = meal "
                    "WHERE diary_entry.import = ?");
    shown.with(import.id).step();
    if (shown.integer(0) > 0) {
        resting.push_back(fmt::format("{} photo(s) were added to its meals: remove them first",
                                      shown.integer(0)));
    }
    return resting;
}

void ImportTable::undo(std::int64_t client, std::int64_t import) {
    diary_.remove_of_import(import);
    Statement blocks(database_,
                     "SELECT wear, day, readings, block FROM block_before WHERE import = ?");
    for (blocks.with(import); blocks.step();) {
        const UtcDay day{std::chrono::days{blocks.integer(1)}};
        if (blocks.is_null(3)) {
            trace_.remove_block(client, blocks.integer(0), day);
        } else {
            trace_.put_block(client, blocks.integer(0), day,
                             static_cast<std::size_t>(blocks.integer(2)), blocks.blob(3));
        }
    }
    Statement restore(database_,
                      "UPDATE wear SET start = before.start, start_told = before.start_told, "
                      "interval_s = before.interval_s, last_at = before.last_at "
                      "FROM wear_before AS before "
                      "WHERE before.import = ? AND before.wear = wear.id AND before.existed = 1");
    restore.with(import).run();
    Statement remove(database_,
                     "DELETE FROM wear WHERE id IN "
                     "(SELECT wear FROM wear_before WHERE import = ? AND existed = 0)");
    remove.with(import).run();
    Statement forget(database_, "DELETE FROM import WHERE id = ?");
    forget.with(import).run();
}

}  // namespace tracewright
