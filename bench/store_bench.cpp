// What the practice on disk costs. Peer of the blocks: the same readings as rows in SQLite.
#include "intake/bring_in.hpp"
#include "store/sqlite_practice.hpp"
#include "store/trace_block.hpp"
#include "store/trace_table.hpp"

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <random>

namespace {

using namespace tracewright;
namespace fs = std::filesystem;

constexpr int clients = 50;
constexpr int readings_each = 20'000;  // a million in all, each five minutes

std::string place(const char* name) {
    return (fs::temp_directory_path() / (std::string("tracewright-bench-") + name)).string();
}

void forget(const std::string& path) {
    for (const char* end : {"", "-wal", "-shm", "-journal"}) {
        std::error_code none;
        fs::remove(path + end, none);
    }
}

// A level that wanders by whole mg/dL.
std::vector<Reading> wandering(int count, int interval, unsigned seed) {
    std::mt19937 draw(seed);
    std::vector<Reading> readings;
    readings.reserve(static_cast<std::size_t>(count));
    int level = 130;
    for (int i = 0; i < count; ++i) {
        level = std::clamp(level + static_cast<int>(draw() % 7) - 3, 45, 320);
        readings.emplace_back(Instant{std::chrono::seconds{1'770'000'000 + i * interval}},
                              Glucose{level * 100, GlucoseUnit::mg_per_dl},
                              std::chrono::seconds{interval});
    }
    return readings;
}

const std::vector<std::vector<Reading>>& million() {
    static const auto all = [] {
        std::vector<std::vector<Reading>> made;
        for (int c = 0; c < clients; ++c) {
            made.push_back(wandering(readings_each, 300, static_cast<unsigned>(c)));
        }
        return made;
    }();
    return all;
}

SecretKey key() {
    std::array<std::uint8_t, SecretKey::bytes> bytes{};
    bytes.fill(3);
    return SecretKey::from(bytes);
}

std::unique_ptr<SqlitePractice> fresh_practice(const std::string& path) {
    forget(path);
    const auto locked =
        LockedPracticeKey::locked(key(), "an invented passphrase", key(), PassphraseWork::least);
    return std::move(*SqlitePractice::create(path, key(), *locked, Coach{"o1", "O"}, Instant{}));
}

std::unique_ptr<SqlitePractice> opened(const std::string& path) {
    // The passphrase's own cost is libsodium's and is left out.
    return std::move(*SqlitePractice::open(
        path,
        [](const LockedPracticeKey&) -> tl::expected<SecretKey, std::string> { return key(); }));
}

void put_blocks(TraceTable& trace, std::int64_t client, std::int64_t wear,
                std::span<const Reading> readings) {
    for (auto begin = readings.begin(); begin != readings.end();) {
        const UtcDay day = utc_day_of(begin->at);
        const auto end = std::find_if(begin, readings.end(),
                                      [&](const Reading& r) { return utc_day_of(r.at) != day; });
        const std::span<const Reading> of_day(begin, end);
        trace.put_block(client, wear, day, of_day.size(), trace_block(day, of_day));
        begin = end;
    }
}

constexpr const char* block_tables =
    "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
    "CREATE TABLE wear(id INTEGER PRIMARY KEY, client INTEGER, sealed_source BLOB, start INTEGER,"
    " start_told INTEGER, ended INTEGER, planned_end INTEGER, interval_s INTEGER,"
    " last_at INTEGER, changed_by_hand_at INTEGER);"
    "CREATE TABLE trace_block(client INTEGER, wear INTEGER, day INTEGER, readings INTEGER,"
    " block BLOB, PRIMARY KEY(client, wear, day)) WITHOUT ROWID;"
    "CREATE TABLE reading(client INTEGER, at INTEGER, hundredths INTEGER, interval_s INTEGER,"
    " flags INTEGER, PRIMARY KEY(client, at)) WITHOUT ROWID;";

void a_million_readings_stored_as_blocks(benchmark::State& state) {
    million();
    for (auto _ : state) {
        state.PauseTiming();
        const std::string path = place("blocks");
        forget(path);
        Database database(path, Database::Mode::create);
        database.run(block_tables);
        TraceTable trace(database);
        state.ResumeTiming();
        Transaction all(database);
        for (int c = 0; c < clients; ++c) {
            put_blocks(trace, c + 1, c + 1, million()[static_cast<std::size_t>(c)]);
        }
        all.commit();
    }
    state.counters["readings"] = clients * readings_each;
}
BENCHMARK(a_million_readings_stored_as_blocks)->Unit(benchmark::kMillisecond)->MinTime(1);

void a_million_readings_stored_as_rows(benchmark::State& state) {
    million();
    for (auto _ : state) {
        state.PauseTiming();
        const std::string path = place("rows");
        forget(path);
        Database database(path, Database::Mode::create);
        database.run(block_tables);
        Statement add(database, "INSERT INTO reading VALUES (?, ?, ?, ?, ?)");
        state.ResumeTiming();
        Transaction all(database);
        for (int c = 0; c < clients; ++c) {
            for (const Reading& r : million()[static_cast<std::size_t>(c)]) {
                add.with(c + 1, r.at.time_since_epoch().count(), std::int64_t{r.hundredths()},
                         r.interval().count(), 0)
                    .run();
            }
        }
        all.commit();
    }
}
BENCHMARK(a_million_readings_stored_as_rows)->Unit(benchmark::kMillisecond)->MinTime(1);

void a_million_readings_read_from_blocks(benchmark::State& state) {
    Database database(place("blocks"), Database::Mode::existing);
    TraceTable trace(database);
    std::size_t count = 0;
    for (auto _ : state) {
        count = 0;
        for (int c = 0; c < clients; ++c) {
            count += trace.readings(c + 1, c + 1).size();
        }
        benchmark::DoNotOptimize(count);
    }
    state.counters["readings"] = static_cast<double>(count);
    state.counters["bytes_a_reading"] =
        static_cast<double>(database.integer("SELECT sum(length(block)) FROM trace_block")) /
        static_cast<double>(count);
}
BENCHMARK(a_million_readings_read_from_blocks)->Unit(benchmark::kMillisecond)->MinTime(1);

void a_million_readings_read_from_rows(benchmark::State& state) {
    Database database(place("rows"), Database::Mode::existing);
    Statement all(database, "SELECT at, hundredths, interval_s FROM reading WHERE client = ?");
    for (auto _ : state) {
        std::size_t count = 0;
        for (int c = 0; c < clients; ++c) {
            std::vector<Reading> readings;
            for (all.with(c + 1); all.step();) {
                readings.emplace_back(
                    Instant{std::chrono::seconds{all.integer(0)}},
                    Glucose{static_cast<std::int32_t>(all.integer(1)), GlucoseUnit::mg_per_dl},
                    std::chrono::seconds{all.integer(2)});
            }
            count += readings.size();
        }
        benchmark::DoNotOptimize(count);
    }
}
BENCHMARK(a_million_readings_read_from_rows)->Unit(benchmark::kMillisecond)->MinTime(1);

// Read, checked, and stored in one import, as the command does it.
void a_year_of_minutes_imported(benchmark::State& state) {
    std::string text = "time,glucose mg/dL\n";
    for (const Reading& r : wandering(525'600, 60, 1)) {
        const auto day = std::chrono::floor<std::chrono::days>(r.at);
        const std::chrono::year_month_day date{day};
        const auto minute = (r.at - day).count() / 60;
        text += fmt::format("{}-{:02}-{:02} {:02}:{:02},{}\n", static_cast<int>(date.year()),
                            static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                            minute / 60, minute % 60, r.hundredths() / 100);
    }
    IntakeOptions options;
    options.zones = ZoneHistory(*Zone::named("UTC"));
    for (auto _ : state) {
        state.PauseTiming();
        auto practice = fresh_practice(place("year"));
        const auto client = *practice->add_client("c1", "T", {}, {1, Instant{}});
        state.ResumeTiming();
        Intake intake = bring_in_bytes(text, "year.csv", options);
        BroughtIn file;
        file.readings = std::move(intake.readings);
        file.rows_stored = intake.ledger.with(Fate::stored);
        const auto outcome =
            practice->bring_in(client, std::move(file), WhoseFile::not_asked, {1, Instant{}});
        if (!outcome || outcome->plan.rows_stored != 525'600) {
            state.SkipWithError("not stored");
        }
    }
}
BENCHMARK(a_year_of_minutes_imported)->Unit(benchmark::kMillisecond)->MinTime(1);

// A thousand clients with a year of five-minute readings each, and one with a diary.
const std::string& thousand() {
    static const std::string path = [] {
        std::string made = place("thousand");
        auto practice = fresh_practice(made);
        const std::vector<Reading> year = wandering(365 * 288, 300, 9);
        for (int c = 1; c <= 1000; ++c) {
            BroughtIn file;
            file.readings = year;
            file.rows_stored = year.size();
            for (int i = 0; c == 1 && i < 365 * 10; ++i) {
                DiaryEntry meal;
                meal.kind = DiaryKind::meal;
                meal.at = year.front().at + std::chrono::minutes{144 * i};
                meal.text = "a plate of something invented";
                meal.source_line = i + 1;
                file.diary.push_back(meal);
                ++file.rows_stored;
            }
            const auto client = practice->add_client(
                fmt::format("c{}", c), fmt::format("Client {} (invented)", c), {}, {1, Instant{}});
            if (!practice->bring_in(*client, std::move(file), WhoseFile::not_asked,
                                    {1, Instant{}})) {
                throw std::runtime_error("not stored");
            }
        }
        return made;
    }();
    return path;
}

void a_practice_of_a_thousand_opened_and_listed(benchmark::State& state) {
    thousand();
    for (auto _ : state) {
        const auto practice = opened(thousand());
        benchmark::DoNotOptimize(practice->clients()->size());
    }
}
BENCHMARK(a_practice_of_a_thousand_opened_and_listed)->Unit(benchmark::kMillisecond)->MinTime(1);

void ninety_days_of_a_client_read(benchmark::State& state) {
    const auto practice = opened(thousand());
    const Instant end{std::chrono::seconds{1'770'000'000 + 365 * 86'400}};
    const Interval window{end - std::chrono::days{90}, end};
    for (auto _ : state) {
        benchmark::DoNotOptimize(practice->client(1)->facts);
        benchmark::DoNotOptimize(practice->wears(1, window)->size());
        benchmark::DoNotOptimize(practice->diary(1, window)->size());
        benchmark::DoNotOptimize(practice->escalations(1)->size());
    }
}
BENCHMARK(ninety_days_of_a_client_read)->Unit(benchmark::kMillisecond)->MinTime(1);

}  // namespace
