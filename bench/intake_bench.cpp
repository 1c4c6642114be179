// A year of 1-minute readings, 525,600 rows: scan with numbers and civil times, and the whole
// intake with zone, checks and row ledger.
#include "intake/bring_in.hpp"
#include "intake/delimited_source.hpp"
#include "intake/plain_scan.hpp"

#include <benchmark/benchmark.h>
#include <fmt/format.h>

using namespace tracewright;

namespace {

std::string year_of_minutes() {
    std::string text = "time,glucose mg/dL\n";
    const WallTime start = std::chrono::local_days{std::chrono::year{2025} / 1 / 1};
    for (int i = 0; i < 525600; ++i) {
        const WallTime at = start + std::chrono::minutes{i};
        const auto day = std::chrono::floor<std::chrono::days>(at);
        const std::chrono::year_month_day ymd{day};
        const std::chrono::hh_mm_ss time{at - day};
        text += fmt::format("{:04}-{:02}-{:02} {:02}:{:02},{}\n", static_cast<int>(ymd.year()),
                            static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                            time.hours().count(), time.minutes().count(), 100 + i * 37 % 90);
    }
    return text;
}

const std::string& year() {
    static const std::string text = year_of_minutes();
    return text;
}

}  // namespace

static void scan_a_year_of_minutes(benchmark::State& state) {
    DelimitedSource source(year(), {}, std::nullopt);
    const TableShape shape = table_shape(sample_of(source), source.facts());
    for (auto unused : state) {
        benchmark::DoNotOptimize(plain_rows(year(), shape, ','));
    }
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(year().size()));
}
BENCHMARK(scan_a_year_of_minutes)->Unit(benchmark::kMillisecond);

static void bring_in_a_year_of_minutes(benchmark::State& state) {
    IntakeOptions options;
    // A zone with rules but without a change of clocks, so that the year has every minute.
    options.zones =
        ZoneHistory{*Zone::named(state.range(0) == 0 ? "Asia/Kolkata" : "Europe/Berlin")};
    options.as_of = std::chrono::sys_days{std::chrono::year{2026} / 6 / 1};
    for (auto unused : state) {
        const Intake intake = bring_in_bytes(year(), "year", options);
        if (intake.ledger.read() != 525600) {
            state.SkipWithError("rows lost");
        }
    }
}
BENCHMARK(bring_in_a_year_of_minutes)->Arg(0)->Unit(benchmark::kMillisecond);
